package greyground.art.webp;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.Comparator;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;

/** Unpacks one image of lossless WebP data, before its transforms are undone: alpha, red, green and blue of each pixel in one number (RFC 9649, 3.6 and 3.7). */
final class LosslessPixels {
    private static final int LITERALS = 256;
    private static final int LENGTHS = 24;
    private static final int DISTANCES = 40;

    /**
     * Where the 120 nearest pixels lie: so many to the left and above, nearest first, of equally near ones the least sideways first and left
     * before right (3.6.2.2, the rule its table follows).
     */
    private static final int[][] NEAR = IntStream.range(0, 8 * 16)
            .mapToObj(i -> new int[] {i % 16 - 7, i / 16})
            .filter(near -> near[1] > 0 || near[0] > 0)
            .sorted(Comparator.<int[]>comparingInt(near -> near[0] * near[0] + near[1] * near[1])
                    .thenComparingInt(near -> Math.abs(near[0]))
                    .thenComparingInt(near -> -near[0]))
            .toArray(int[][]::new);

    private final LosslessBits bits;
    private final int width;
    private final BooleanSupplier stopped;
    private final int[] pixels;
    /** Colours seen lately, by a mixture of their bits; none where that isn't used. */
    private final int[] seen;

    private final int seenShift;

    private LosslessPixels(LosslessBits bits, int width, int height, BooleanSupplier stopped) throws IOException {
        this.bits = bits;
        this.width = width;
        this.stopped = stopped;
        int seenBits = bits.flag() ? bits.number(4) : 0;
        if (seenBits > 11) {
            throw new Unreadable(PrefixCode.DAMAGED);
        }
        this.seen = new int[seenBits == 0 ? 0 : 1 << seenBits];
        this.seenShift = 32 - seenBits;
        this.pixels = new int[width * height];
    }

    /**
     * Reads {@code width} x {@code height} pixels.
     *
     * @param whole whether it is the picture itself, which may use several groups of codes
     * @param stopped ends the work
     */
    static int[] read(LosslessBits bits, int width, int height, boolean whole, BooleanSupplier stopped)
            throws IOException {
        LosslessPixels image = new LosslessPixels(bits, width, height, stopped);
        int groupBits = 0;
        int[] groupOf = {0};
        if (whole && bits.flag()) {
            groupBits = 2 + bits.number(3);
            groupOf = read(bits, blocks(width, groupBits), blocks(height, groupBits), false, stopped);
            for (int i = 0; i < groupOf.length; i++) {
                groupOf[i] = (groupOf[i] >> 8) & 0xFFFF;
            }
        }
        PrefixCode[][] groups = new PrefixCode[1 + IntStream.of(groupOf).max().orElse(0)][5];
        for (PrefixCode[] group : groups) {
            group[0] = PrefixCode.read(bits, LITERALS + LENGTHS + image.seen.length);
            group[1] = PrefixCode.read(bits, LITERALS);
            group[2] = PrefixCode.read(bits, LITERALS);
            group[3] = PrefixCode.read(bits, LITERALS);
            group[4] = PrefixCode.read(bits, DISTANCES);
        }
        image.unpack(groups, groupOf, groupBits);
        return image.pixels;
    }

    /** How many blocks of 2^{@code bits} pixels cover a side. */
    static int blocks(int side, int bits) {
        return (side + (1 << bits) - 1) >> bits;
    }

    private void unpack(PrefixCode[][] groups, int[] groupOf, int groupBits) throws IOException {
        int groupsAcross = blocks(width, groupBits);
        PrefixCode[] group = groups[0];
        for (int at = 0; at < pixels.length; ) {
            if (stopped.getAsBoolean()) {
                throw new InterruptedIOException("stopped");
            }
            if (groups.length > 1) {
                group = groups[groupOf[((at / width) >> groupBits) * groupsAcross + ((at % width) >> groupBits)]];
            }
            int symbol = group[0].symbol(bits);
            if (symbol >= LITERALS && symbol < LITERALS + LENGTHS) {
                at = copy(at, symbol - LITERALS, group[4]);
                continue;
            }
            if (symbol < LITERALS) {
                int red = group[1].symbol(bits);
                int blue = group[2].symbol(bits);
                put(at, group[3].symbol(bits) << 24 | red << 16 | symbol << 8 | blue);
            } else {
                put(at, seen[symbol - LITERALS - LENGTHS]);
            }
            at++;
        }
    }

    private void put(int at, int pixel) {
        pixels[at] = pixel;
        if (seen.length > 0) {
            seen[(0x1E35_A7BD * pixel) >>> seenShift] = pixel;
        }
    }

    private int copy(int at, int lengthCode, PrefixCode distances) throws IOException {
        int length = extended(lengthCode);
        int code = extended(distances.symbol(bits));
        int distance = code - NEAR.length;
        if (distance <= 0) {
            int[] near = NEAR[code - 1];
            distance = Math.max(1, near[0] + near[1] * width);
        }
        if (distance > at || length > pixels.length - at) {
            throw new Unreadable(PrefixCode.DAMAGED);
        }
        for (int i = at; i < at + length; i++) {
            put(i, pixels[i - distance]);
        }
        return at + length;
    }

    /** A length or distance, from 1, out of its symbol and the bits behind it: 3.6.2.2. */
    private int extended(int symbol) throws IOException {
        if (symbol < 4) {
            return symbol + 1;
        }
        int extra = (symbol - 2) / 2;
        return ((2 + symbol % 2) << extra) + bits.number(extra) + 1;
    }
}
