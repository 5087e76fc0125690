package greyground.art.packing;

import java.io.IOException;
import java.util.Arrays;

/**
 * A finite state entropy code (RFC 8878, 4.1): each state stands for a symbol, and says how many bits lead to which state next.
 * Immutable.
 */
final class StateTable {
    private final int accuracyLog;
    private final byte[] symbols;
    private final byte[] bits;
    private final short[] bases;

    private StateTable(int accuracyLog, byte[] symbols, byte[] bits, short[] bases) {
        this.accuracyLog = accuracyLog;
        this.symbols = symbols;
        this.bits = bits;
        this.bases = bases;
    }

    /** A code of one symbol, which takes no bits. */
    static StateTable of(int symbol) {
        return new StateTable(0, new byte[] {(byte) symbol}, new byte[1], new short[1]);
    }

    /** A code of symbols that take these shares of 2^{@code accuracyLog} states; -1 is one state, at the end. */
    static StateTable of(int accuracyLog, int... shares) throws IOException {
        int size = 1 << accuracyLog;
        byte[] symbols = new byte[size];
        int[] next = new int[shares.length];
        int end = size;
        for (int symbol = 0; symbol < shares.length; symbol++) {
            next[symbol] = Math.abs(shares[symbol]);
            if (shares[symbol] < 0) {
                symbols[--end] = (byte) symbol;
            }
        }
        int at = 0;
        for (int symbol = 0; symbol < shares.length; symbol++) {
            for (int i = 0; i < shares[symbol]; i++) {
                symbols[at] = (byte) symbol;
                do {
                    at = at + (size >> 1) + (size >> 3) + 3 & size - 1;
                } while (at >= end);
            }
        }
        if (at != 0) {
            throw Zstandard.damaged();
        }
        byte[] bits = new byte[size];
        short[] bases = new short[size];
        for (int state = 0; state < size; state++) {
            int each = next[symbols[state] & 0xFF]++;
            bits[state] = (byte) (accuracyLog - log2(each));
            bases[state] = (short) ((each << bits[state]) - size);
        }
        return new StateTable(accuracyLog, symbols, bits, bases);
    }

    /** A code that is sound by definition. */
    static StateTable known(int accuracyLog, int... shares) {
        try {
            return of(accuracyLog, shares);
        } catch (IOException never) {
            throw new IllegalStateException(never);
        }
    }

    /** A table from its description in a block, and where that ends. */
    record Described(StateTable table, int end) {}

    /** Reads the shares of a table from the byte at {@code from} on. */
    static Described read(byte[] bytes, int from, int to, int mostAccuracy, int mostSymbol) throws IOException {
        ForwardBits in = new ForwardBits(bytes, from, to);
        int accuracyLog = 5 + in.next(4);
        if (accuracyLog > mostAccuracy) {
            throw Zstandard.damaged();
        }
        int[] shares = new int[mostSymbol + 1];
        int remaining = 1 << accuracyLog;
        int symbol = 0;
        while (remaining > 0) {
            int width = log2(remaining + 1) + 1;
            int value = in.peek(width);
            int low = (1 << (width - 1)) - 1;
            int spared = (1 << width) - 1 - (remaining + 1);
            boolean isShort = (value & low) < spared;
            in.skip(isShort ? width - 1 : width);
            if (isShort) {
                value &= low;
            } else if (value > low) {
                value -= spared;
            }
            if (symbol > mostSymbol) {
                throw Zstandard.damaged();
            }
            shares[symbol++] = value - 1;
            remaining -= Math.abs(value - 1);
            if (value == 1) {
                int more;
                do {
                    more = in.next(2);
                    symbol += more;
                } while (more == 3);
            }
        }
        if (remaining < 0 || symbol > mostSymbol + 1) {
            throw Zstandard.damaged();
        }
        return new Described(of(accuracyLog, Arrays.copyOf(shares, symbol)), in.end());
    }

    private static int log2(int value) {
        return 31 - Integer.numberOfLeadingZeros(value);
    }

    int first(BackwardBits in) {
        return (int) in.next(accuracyLog);
    }

    int symbol(int state) {
        return symbols[state] & 0xFF;
    }

    int next(int state, BackwardBits in) {
        return bases[state] + (int) in.next(bits[state]);
    }

    /** Bits from the lowest of the first byte on. */
    private static final class ForwardBits {
        private final byte[] bytes;
        private final int to;
        private long at;

        ForwardBits(byte[] bytes, int from, int to) {
            this.bytes = bytes;
            this.to = to;
            this.at = 8L * from;
        }

        int peek(int count) {
            int value = 0;
            for (int i = 0; i < count; i++) {
                int octet = (int) ((at + i) >> 3);
                if (octet < to) {
                    value |= (bytes[octet] >> (at + i & 7) & 1) << i;
                }
            }
            return value;
        }

        void skip(int count) throws IOException {
            at += count;
            if (at > 8L * to) {
                throw Zstandard.damaged();
            }
        }

        int next(int count) throws IOException {
            int value = peek(count);
            skip(count);
            return value;
        }

        int end() {
            return (int) ((at + 7) >> 3);
        }
    }
}
