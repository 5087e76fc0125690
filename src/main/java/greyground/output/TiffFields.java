package greyground.output;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;

/**
 * The directory of one TIFF page, little-endian: classic (TIFF 6.0, 1992, section 2) or BigTIFF with 64-bit offsets (layout
 * from memory, checked in the tests with an independent reader). One thread.
 */
final class TiffFields {
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int LONG8 = 16;

    private final boolean big;
    private final TreeMap<Integer, Entry> entries = new TreeMap<>();

    TiffFields(boolean big) {
        this.big = big;
    }

    private record Entry(int type, long count, ByteBuffer value) {}

    /** The file's first bytes; the place of the first directory is to be filled in when it is known. */
    static byte[] header(boolean big, long firstDirectory) {
        byte[] bytes = new byte[big ? 16 : 8];
        ByteBuffer header = little(bytes).put((byte) 'I').put((byte) 'I');
        if (big) {
            header.putShort((short) 43).putShort((short) 8).putShort((short) 0).putLong(firstDirectory);
        } else {
            header.putShort((short) 42).putInt((int) firstDirectory);
        }
        return bytes;
    }

    void shorts(int tag, int value) {
        entries.put(
                tag,
                new Entry(SHORT, 1, little(new byte[2]).putShort((short) value).flip()));
    }

    void longs(int tag, int value) {
        entries.put(tag, new Entry(LONG, 1, little(new byte[4]).putInt(value).flip()));
    }

    void words(int tag, String words) {
        byte[] bytes = (words + "\0").getBytes(StandardCharsets.UTF_8);
        entries.put(tag, new Entry(ASCII, bytes.length, ByteBuffer.wrap(bytes)));
    }

    void rational(int tag, int numerator, int denominator) {
        entries.put(
                tag,
                new Entry(
                        RATIONAL,
                        1,
                        little(new byte[8])
                                .putInt(numerator)
                                .putInt(denominator)
                                .flip()));
    }

    /** File positions or lengths, as wide as the file's kind has them. */
    void positions(int tag, long[] values) {
        ByteBuffer out = little(new byte[Math.multiplyExact(values.length, big ? 8 : 4)]);
        for (long value : values) {
            number(out, value);
        }
        entries.put(tag, new Entry(big ? LONG8 : LONG, values.length, out.flip()));
    }

    /** The directory and its long values, to stand at {@code position}, an even number. */
    byte[] bytes(long position, long nextDirectory) {
        int inline = big ? 8 : 4;
        int tableBytes = big ? 8 + 20 * entries.size() + 8 : 2 + 12 * entries.size() + 4;
        int size = tableBytes;
        for (Entry entry : entries.values()) {
            int length = entry.value.limit();
            size += length > inline ? even(length) : 0;
        }
        byte[] bytes = new byte[size];
        ByteBuffer out = little(bytes);
        long valueAt = position + tableBytes;
        if (big) {
            out.putLong(entries.size());
        } else {
            out.putShort((short) entries.size());
        }
        for (Map.Entry<Integer, Entry> tagged : entries.entrySet()) {
            Entry entry = tagged.getValue();
            out.putShort(tagged.getKey().shortValue()).putShort((short) entry.type);
            number(out, entry.count);
            int length = entry.value.limit();
            if (length > inline) {
                number(out, valueAt);
                out.put((int) (valueAt - position), entry.value, 0, length);
                valueAt += even(length);
            } else {
                out.put(out.position(), entry.value, 0, length).position(out.position() + inline);
            }
        }
        number(out, nextDirectory);
        return bytes;
    }

    /** Where the number of the next directory stands, counted from a directory's start. */
    int nextAt() {
        return big ? 8 + 20 * entries.size() : 2 + 12 * entries.size();
    }

    private void number(ByteBuffer out, long value) {
        if (big) {
            out.putLong(value);
        } else {
            out.putInt((int) value);
        }
    }

    private static int even(int bytes) {
        return bytes + (bytes & 1);
    }

    private static ByteBuffer little(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
    }
}
