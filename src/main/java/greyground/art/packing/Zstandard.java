package greyground.art.packing;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Unpacks Zstandard (RFC 8878), as TIFF uses it (compression 50 000): frames without a dictionary; checksums are passed over, as libtiff
 * writes none. Written here, since the libraries for it in Java reach past the Java machine's checks, of which new Java versions warn, or
 * bring native parts.
 *
 * <p>Holds what may be copied from, at most 128 MiB and no more than was unpacked.
 */
public final class Zstandard extends ByteRuns {
    private static final int FRAME = 0xFD2FB528;
    private static final int SKIPPED = 0x184D2A50;
    private static final int BLOCK = 128 << 10;
    private static final int WIDEST = 128 << 20;

    private static final int[] LENGTH_BITS = {
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 3, 3, 4, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15,
        16
    };
    private static final int[] MATCH_BITS = {
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2,
        2, 3, 3, 4, 4, 5, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16
    };
    private static final int MOST_OFFSET = 31;

    /** Each code begins where the one before ends (tables 16 and 17 there). */
    private static final int[] LENGTHS = sums(0, LENGTH_BITS);

    private static final int[] MATCHES = sums(3, MATCH_BITS);

    private final InputStream packed;
    private final byte[] block = new byte[BLOCK + BackwardBits.SPARE];
    private final byte[] literals = new byte[BLOCK];
    private byte[] out = new byte[2 * BLOCK];
    private int written;
    private int taken;
    private int window;
    private boolean inFrame;
    private boolean checksum;
    private final int[] offsets = new int[3];
    private @Nullable LiteralCode code;
    private @Nullable StateTable lengthTable;
    private @Nullable StateTable offsetTable;
    private @Nullable StateTable matchTable;

    public Zstandard(InputStream packed) {
        this.packed = packed;
    }

    static Unreadable damaged() {
        return new Unreadable("the packed picture data are damaged");
    }

    private static int[] sums(int first, int[] bits) {
        int[] sums = new int[bits.length];
        int sum = first;
        for (int i = 0; i < bits.length; i++) {
            sums[i] = sum;
            sum += 1 << bits[i];
        }
        return sums;
    }

    /** Always as many as are asked for. */
    @Override
    public int read(byte[] into, int offset, int count) throws IOException {
        int done = 0;
        while (done < count) {
            if (taken == written) {
                advance();
            }
            int some = Math.min(count - done, written - taken);
            System.arraycopy(out, taken, into, offset + done, some);
            taken += some;
            done += some;
        }
        return count;
    }

    private int octet() throws IOException {
        int octet = packed.read();
        if (octet < 0) {
            throw new Unreadable("the picture data end early");
        }
        return octet;
    }

    private long number(int bytes) throws IOException {
        long number = 0;
        for (int i = 0; i < bytes; i++) {
            number |= (long) octet() << (8 * i);
        }
        return number;
    }

    /** Unpacks one block, or the head of a frame. */
    private void advance() throws IOException {
        if (!inFrame) {
            begin();
            return;
        }
        int head = (int) number(3);
        int size = head >>> 3;
        room();
        switch (head >> 1 & 3) {
            case 0 -> {
                check(size <= BLOCK);
                Unpacked.fill(packed, out, written, size);
                written += size;
            }
            case 1 -> {
                check(size <= BLOCK);
                Arrays.fill(out, written, written + size, (byte) octet());
                written += size;
            }
            case 2 -> {
                check(size >= 2 && size <= BLOCK);
                Unpacked.fill(packed, block, 0, size);
                unpack(size);
            }
            default -> throw damaged();
        }
        if ((head & 1) != 0) {
            inFrame = false;
            number(checksum ? 4 : 0);
        }
    }

    private static void check(boolean sound) throws IOException {
        if (!sound) {
            throw damaged();
        }
    }

    /** Makes room for a block; what is farther back than the window goes. */
    private void room() {
        if (written + BLOCK <= out.length) {
            return;
        }
        int kept = Math.min(window, written);
        if (kept + 2L * BLOCK > out.length) {
            out = Arrays.copyOf(out, (int) Math.min(2L * out.length, window + 4L * BLOCK));
            if (written + BLOCK <= out.length) {
                return;
            }
        }
        System.arraycopy(out, written - kept, out, 0, kept);
        taken -= written - kept;
        written = kept;
    }

    private void begin() throws IOException {
        int magic = (int) number(4);
        if ((magic & ~15) == SKIPPED) {
            for (long left = number(4); left > 0; left--) {
                octet();
            }
            return;
        }
        check(magic == FRAME);
        int descriptor = octet();
        boolean single = (descriptor & 32) != 0;
        long size = 0;
        if (!single) {
            int octet = octet();
            long base = 1L << (10 + (octet >> 3));
            size = base + base / 8 * (octet & 7);
        }
        int dictionary = descriptor & 3;
        long named = number(dictionary == 3 ? 4 : dictionary);
        int bytes = descriptor >> 6 == 0 ? single ? 1 : 0 : 1 << (descriptor >> 6);
        long content = number(bytes) + (bytes == 2 ? 256 : 0);
        size = single ? content : size;
        check((descriptor & 8) == 0 && named == 0 && size >= 0 && size <= WIDEST);
        checksum = (descriptor & 4) != 0;
        window = (int) size;
        inFrame = true;
        // Nothing is copied from another frame.
        written = 0;
        taken = 0;
        offsets[0] = 1;
        offsets[1] = 4;
        offsets[2] = 8;
        code = null;
        lengthTable = null;
        offsetTable = null;
        matchTable = null;
    }

    private void unpack(int size) throws IOException {
        int kind = block[0] & 3;
        int format = block[0] >> 2 & 3;
        int count;
        int at;
        long head = 0;
        for (int i = 0; i < 5; i++) {
            head |= (block[i] & 0xFFL) << (8 * i);
        }
        if (kind < 2) {
            int bytes = format == 1 ? 2 : format == 3 ? 3 : 1;
            count = (int) ((head & ((1L << (8 * bytes)) - 1)) >> (bytes == 1 ? 3 : 4));
            check(count <= BLOCK && bytes + (kind == 0 ? count : 1) <= size);
            if (kind == 0) {
                System.arraycopy(block, bytes, literals, 0, count);
                at = bytes + count;
            } else {
                Arrays.fill(literals, 0, count, block[bytes]);
                at = bytes + 1;
            }
        } else {
            int width = format < 2 ? 10 : format == 2 ? 14 : 18;
            int bytes = (4 + 2 * width) / 8;
            long mask = (1L << width) - 1;
            count = (int) (head >> 4 & mask);
            int end = bytes + (int) ((head >> (4 + width)) & mask);
            check(count <= BLOCK && end <= size);
            prefixed(kind == 2, format > 0, bytes, end, count);
            at = end;
        }
        sequences(at, size, count);
    }

    /** Literals in a prefix code, in one stream or four. */
    private void prefixed(boolean described, boolean four, int from, int end, int count) throws IOException {
        LiteralCode present = described ? LiteralCode.read(block, from, end) : code;
        if (present == null) {
            throw damaged();
        }
        code = present;
        int at = described ? present.end() : from;
        if (!four) {
            present.decode(block, at, end, literals, 0, count);
            return;
        }
        int quarter = (count + 3) / 4;
        int data = at + 6;
        check(data <= end && count - 3 * quarter >= 0);
        for (int stream = 0; stream < 4; stream++) {
            int length = stream == 3 ? end - data : (block[at] & 0xFF) | (block[at + 1] & 0xFF) << 8;
            check(length <= end - data);
            int some = stream == 3 ? count - 3 * quarter : quarter;
            present.decode(block, data, data + length, literals, stream * quarter, some);
            data += length;
            at += 2;
        }
    }

    private void sequences(int from, int size, int literalCount) throws IOException {
        check(from < size);
        int at = from;
        int count = block[at++] & 0xFF;
        if (count > 127) {
            check(at + 1 < size);
            count = count < 255
                    ? ((count - 128) << 8) + (block[at++] & 0xFF)
                    : (block[at++] & 0xFF) + ((block[at++] & 0xFF) << 8) + 0x7F00;
        }
        int literal = 0;
        if (count > 0) {
            check(at < size);
            int modes = block[at++] & 0xFF;
            StateTable.Described table = table(modes >> 6, lengthTable, Usual.LENGTHS, at, size, 9, LENGTHS.length - 1);
            StateTable lengths = table.table();
            table = table(modes >> 4 & 3, offsetTable, Usual.OFFSETS, table.end(), size, 8, MOST_OFFSET);
            StateTable places = table.table();
            table = table(modes >> 2 & 3, matchTable, Usual.MATCHES, table.end(), size, 9, MATCHES.length - 1);
            StateTable matches = table.table();
            lengthTable = lengths;
            offsetTable = places;
            matchTable = matches;
            BackwardBits in = new BackwardBits(block, table.end(), size);
            int length = lengths.first(in);
            int place = places.first(in);
            int match = matches.first(in);
            int most = written + BLOCK;
            for (int i = 0; i < count; i++) {
                int placed = places.symbol(place);
                long offset = (1L << placed) + in.next(placed);
                int matchCode = matches.symbol(match);
                int copied = MATCHES[matchCode] + (int) in.next(MATCH_BITS[matchCode]);
                int lengthCode = lengths.symbol(length);
                int plain = LENGTHS[lengthCode] + (int) in.next(LENGTH_BITS[lengthCode]);
                if (i + 1 < count) {
                    length = lengths.next(length, in);
                    match = matches.next(match, in);
                    place = places.next(place, in);
                }
                long back = back(offset, plain == 0);
                check(in.left() >= 0
                        && plain <= literalCount - literal
                        && plain + copied <= most - written
                        && back > 0
                        && back <= Math.min(window, written + plain));
                System.arraycopy(literals, literal, out, written, plain);
                literal += plain;
                written += plain;
                copy((int) back, copied);
            }
            check(in.left() == 0);
            check(literalCount - literal <= most - written);
        }
        System.arraycopy(literals, literal, out, written, literalCount - literal);
        written += literalCount - literal;
    }

    /** Byte after byte where the copy runs into itself. */
    private void copy(int back, int count) {
        if (back >= count) {
            System.arraycopy(out, written - back, out, written, count);
        } else {
            for (int i = written; i < written + count; i++) {
                out[i] = out[i - back];
            }
        }
        written += count;
    }

    /** How far back a copy lies: told, or one of the last three (there, 3.1.1.5). */
    private long back(long offset, boolean noLiterals) {
        int which = offset > 3 ? 3 : (int) offset - 1 + (noLiterals ? 1 : 0);
        if (which == 0) {
            return offsets[0];
        }
        long back = offset > 3 ? offset - 3 : which == 3 ? offsets[0] - 1 : offsets[which];
        if (which > 1) {
            offsets[2] = offsets[1];
        }
        offsets[1] = offsets[0];
        offsets[0] = (int) Math.min(back, Integer.MAX_VALUE);
        return back;
    }

    private StateTable.Described table(
            int mode, @Nullable StateTable before, StateTable usual, int at, int end, int mostAccuracy, int mostSymbol)
            throws IOException {
        if (mode == 0) {
            return new StateTable.Described(usual, at);
        }
        if (mode == 1) {
            check(at < end && (block[at] & 0xFF) <= mostSymbol);
            return new StateTable.Described(StateTable.of(block[at]), at + 1);
        }
        if (mode == 2) {
            return StateTable.read(block, at, end, mostAccuracy, mostSymbol);
        }
        if (before == null) {
            throw damaged();
        }
        return new StateTable.Described(before, at);
    }

    /** The tables that every reader knows (there, 3.1.1.3.2.2). */
    private static final class Usual {
        static final StateTable LENGTHS = StateTable.known(
                6, 4, 3, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 3, 2, 1, 1, 1, 1, 1, -1,
                -1, -1, -1);
        static final StateTable MATCHES = StateTable.known(
                6, 1, 4, 3, 2, 2, 2, 2, 2, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
                1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, -1, -1, -1, -1, -1, -1, -1);
        static final StateTable OFFSETS = StateTable.known(
                5, 1, 1, 1, 1, 1, 1, 2, 2, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, -1, -1, -1, -1, -1);
    }
}
