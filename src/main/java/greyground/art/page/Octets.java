package greyground.art.page;

import java.nio.charset.StandardCharsets;

/**
 * Numbers out of bytes already in memory, in one byte order, checked against the end.
 *
 * @param bytes the bytes
 * @param bigEndian whether the most significant byte comes first
 */
@SuppressWarnings("ArrayRecordComponent") // Never compared, and never seen outside this package.
public record Octets(byte[] bytes, boolean bigEndian) {
    public int u8(int at) throws Unreadable {
        check(at, 1);
        return bytes[at] & 0xFF;
    }

    public int u16(int at) throws Unreadable {
        check(at, 2);
        int a = bytes[at] & 0xFF;
        int b = bytes[at + 1] & 0xFF;
        return bigEndian ? a << 8 | b : b << 8 | a;
    }

    public long u32(int at) throws Unreadable {
        check(at, 4);
        long a = u16(at);
        long b = u16(at + 2);
        return bigEndian ? a << 16 | b : b << 16 | a;
    }

    public int s32(int at) throws Unreadable {
        return (int) u32(at);
    }

    public long s64(int at) throws Unreadable {
        check(at, 8);
        long a = u32(at);
        long b = u32(at + 4);
        return bigEndian ? a << 32 | b : b << 32 | a;
    }

    public String text(int at, int count) throws Unreadable {
        check(at, count);
        return new String(bytes, at, count, StandardCharsets.ISO_8859_1);
    }

    private void check(int at, int count) throws Unreadable {
        if (at < 0 || count < 0 || at > bytes.length - count) {
            throw new Unreadable("a table ends before byte " + ((long) at + count));
        }
    }
}
