package greyground.art.webp;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.Arrays;

/** One prefix code of lossless WebP data, of at most 4096 symbols (RFC 9649, 3.7.2). */
final class PrefixCode {
    static final String DAMAGED = "its lossless picture data are damaged: fetch the file again, or save it anew";

    private static final int LONGEST = 15;
    /** Codes of so many bits are found at one look (assumed: most are shorter). */
    private static final int QUICK = 8;
    /** In which order lengths of the code that codes the lengths are told: RFC 9649, 3.7.2.1.2. */
    private static final int[] ORDER = {17, 18, 0, 1, 2, 3, 4, 5, 16, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15};

    private final int quickBits;
    /** By the bits that come next: length in the upper four, symbol below; 0 for codes that are longer. */
    private final char[] quick;
    /** How many codes there are of each length, and all symbols by their codes. */
    private final char[] counts = new char[LONGEST + 1];

    private final char[] symbols;

    private PrefixCode(byte[] lengths, int alphabet) throws Unreadable {
        int used = 0;
        int longest = 0;
        int room = 1 << LONGEST;
        for (int symbol = 0; symbol < alphabet; symbol++) {
            int length = lengths[symbol];
            if (length > 0) {
                used++;
                counts[length]++;
                longest = Math.max(longest, length);
                room -= 1 << (LONGEST - length);
            }
        }
        // A single symbol needs no bits, whatever length it was given; other codes leave nothing over.
        if (used == 0 || (used > 1 && room != 0)) {
            throw new Unreadable(DAMAGED);
        }
        symbols = sorted(lengths, alphabet, used);
        quickBits = used == 1 ? 0 : Math.min(QUICK, longest);
        quick = new char[1 << quickBits];
        if (used == 1) {
            quick[0] = symbols[0];
        } else {
            fill();
        }
    }

    private char[] sorted(byte[] lengths, int alphabet, int used) {
        int[] next = new int[LONGEST + 2];
        for (int length = 1; length <= LONGEST; length++) {
            next[length + 1] = next[length] + counts[length];
        }
        char[] all = new char[used];
        for (int symbol = 0; symbol < alphabet; symbol++) {
            if (lengths[symbol] > 0) {
                all[next[lengths[symbol]]++] = (char) symbol;
            }
        }
        return all;
    }

    private void fill() {
        int code = 0;
        int index = 0;
        for (int length = 1; length <= quickBits; length++, code *= 2) {
            for (int i = 0; i < counts[length]; i++, code++, index++) {
                int turned = Integer.reverse(code) >>> (32 - length);
                for (int at = turned; at < quick.length; at += 1 << length) {
                    quick[at] = (char) (length << 12 | symbols[index]);
                }
            }
        }
    }

    /** Reads the code of an alphabet of so many symbols. */
    static PrefixCode read(LosslessBits bits, int alphabet) throws IOException {
        byte[] lengths = new byte[Math.max(256, alphabet)];
        if (bits.flag()) {
            boolean two = bits.flag();
            lengths[bits.number(bits.flag() ? 8 : 1)] = 1;
            if (two) {
                lengths[bits.number(8)] = 1;
            }
        } else {
            readLengths(bits, alphabet, lengths);
        }
        return new PrefixCode(lengths, alphabet);
    }

    private static void readLengths(LosslessBits bits, int alphabet, byte[] lengths) throws IOException {
        byte[] ofLengths = new byte[ORDER.length];
        int told = 4 + bits.number(4);
        for (int i = 0; i < told; i++) {
            ofLengths[ORDER[i]] = (byte) bits.number(3);
        }
        int reads = alphabet;
        if (bits.flag()) {
            reads = 2 + bits.number(2 + 2 * bits.number(3));
            if (reads > alphabet) {
                throw new Unreadable(DAMAGED);
            }
        }
        PrefixCode code = new PrefixCode(ofLengths, ofLengths.length);
        byte previous = 8;
        for (int symbol = 0; symbol < alphabet && reads > 0; reads--) {
            int length = code.symbol(bits);
            int times = 1;
            if (length == 16) {
                times = 3 + bits.number(2);
            } else if (length > 16) {
                times = length == 17 ? 3 + bits.number(3) : 11 + bits.number(7);
            } else {
                previous = length == 0 ? previous : (byte) length;
            }
            if (times > alphabet - symbol) {
                throw new Unreadable(DAMAGED);
            }
            byte repeated = length == 16 ? previous : (byte) (length > 16 ? 0 : length);
            Arrays.fill(lengths, symbol, symbol + times, repeated);
            symbol += times;
        }
    }

    /** The symbol that comes next. */
    int symbol(LosslessBits bits) throws IOException {
        int found = quick[bits.peek(quickBits)];
        int length = found >> 12;
        if (length > 0 || quickBits == 0) {
            bits.skip(length);
            return found & 0xFFF;
        }
        return longSymbol(bits);
    }

    private int longSymbol(LosslessBits bits) throws IOException {
        int ahead = bits.peek(LONGEST);
        int code = 0;
        int first = 0;
        int index = 0;
        for (int length = 1; length <= LONGEST; length++) {
            code = 2 * code + ((ahead >> (length - 1)) & 1);
            if (code - first < counts[length]) {
                bits.skip(length);
                return symbols[index + code - first];
            }
            index += counts[length];
            first = 2 * (first + counts[length]);
        }
        throw new Unreadable(DAMAGED);
    }
}
