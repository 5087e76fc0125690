package greyground.art.packing;

import java.io.IOException;

/** Zstandard's prefix code of literals (RFC 8878, 4.2): codes of at most 11 bits, read backwards. Immutable. */
final class LiteralCode {
    private static final int MOST_BITS = 11;
    private static final int MOST_WEIGHTS = 255;

    private final int width;
    private final byte[] symbols;
    private final byte[] lengths;
    private final int end;

    /** Builds the code of these weights, whose last is left out, described up to {@code end}. */
    private LiteralCode(int[] weights, int count, int end) throws IOException {
        this.end = end;
        int sum = 0;
        for (int i = 0; i < count; i++) {
            sum += weights[i] == 0 ? 0 : 1 << (weights[i] - 1);
        }
        width = 32 - Integer.numberOfLeadingZeros(sum);
        int rest = (1 << width) - sum;
        if (sum == 0 || width > MOST_BITS || Integer.bitCount(rest) != 1) {
            throw Zstandard.damaged();
        }
        weights[count] = 32 - Integer.numberOfLeadingZeros(rest);
        symbols = new byte[1 << width];
        lengths = new byte[1 << width];
        int at = 0;
        for (int weight = 1; weight <= width; weight++) {
            for (int symbol = 0; symbol <= count; symbol++) {
                for (int i = 0; weights[symbol] == weight && i < 1 << (weight - 1); i++) {
                    symbols[at] = (byte) symbol;
                    lengths[at++] = (byte) (width + 1 - weight);
                }
            }
        }
    }

    /** Reads the weights from the byte at {@code from} on. */
    static LiteralCode read(byte[] bytes, int from, int to) throws IOException {
        int head = from < to ? bytes[from] & 0xFF : 0;
        int[] weights = new int[MOST_WEIGHTS + 1];
        int count = 0;
        int end = from + 1 + (head < 128 ? head : (head - 126) >> 1);
        if (end > to || head == 0) {
            throw Zstandard.damaged();
        }
        if (head >= 128) {
            for (; count < head - 127; count++) {
                int pair = bytes[from + 1 + count / 2] & 0xFF;
                weights[count] = count % 2 == 0 ? pair >> 4 : pair & 15;
            }
            return new LiteralCode(weights, count, end);
        }
        StateTable.Described described = StateTable.read(bytes, from + 1, end, 6, 12);
        StateTable table = described.table();
        BackwardBits in = new BackwardBits(bytes, described.end(), end);
        // Two states in turn; when the bits are spent, the other one's symbol is the last.
        int state = table.first(in);
        int other = table.first(in);
        while (count < MOST_WEIGHTS) {
            weights[count++] = table.symbol(state);
            int next = table.next(state, in);
            if (in.left() < 0) {
                break;
            }
            state = other;
            other = next;
        }
        if (in.left() >= 0 || count == MOST_WEIGHTS) {
            throw Zstandard.damaged();
        }
        weights[count++] = table.symbol(other);
        return new LiteralCode(weights, count, end);
    }

    /** Where the description ends. */
    int end() {
        return end;
    }

    /** Reads {@code count} literals from one stream, which must hold just so many. */
    void decode(byte[] bytes, int from, int to, byte[] into, int offset, int count) throws IOException {
        BackwardBits in = new BackwardBits(bytes, from, to);
        for (int i = 0; i < count; i++) {
            int code = (int) in.peek(width);
            into[offset + i] = symbols[code];
            in.skip(lengths[code]);
        }
        if (in.left() != 0) {
            throw Zstandard.damaged();
        }
    }
}
