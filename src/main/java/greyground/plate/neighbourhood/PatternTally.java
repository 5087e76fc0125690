package greyground.plate.neighbourhood;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;

/**
 * Sums of what the engine printed, under each pattern's least turn. One thread adds; nothing here depends on the order in which
 * patterns are asked for, and tallies are joined in a fixed order.
 */
final class PatternTally {
    /** Root of the print, of pixels where the pad is held up by land near by, and how many of those there are. */
    static final int ROOT = 0;

    static final int HELD = 1;

    /** Root of the print if nothing were wiped. */
    static final int FULL = 2;

    /** The least depth within the pixel, in micrometres. */
    static final int LEAST_DEPTH = 3;

    static final int COVERED = 4;

    /** Brightness of the copper by the lamp's corner, four columns. */
    static final int RELIEF = 5;

    static final int COLUMNS = RELIEF + 4;

    private static final int MAGIC = 0x474E4231;

    private long[] patterns = new long[1 << 12];
    private int[] counts = new int[1 << 12];
    private double[] sums = new double[COLUMNS << 12];
    private int size;

    /** Adds a pixel's values, its corners turned with it. */
    void add(Neighbourhood disc, long pattern, double[] values) {
        int turn = disc.leastTurn(pattern);
        int at = COLUMNS * slot(disc.turned(pattern, turn), 1);
        for (int column = 0; column < RELIEF; column++) {
            sums[at + column] += values[column];
        }
        for (int corner = 0; corner < 4; corner++) {
            sums[at + RELIEF + Neighbourhood.corner(corner, turn)] += values[RELIEF + corner];
        }
    }

    /** Adds another tally. */
    void add(PatternTally other) {
        for (int i : other.inOrder()) {
            int at = COLUMNS * slot(other.patterns[i], other.counts[i]);
            for (int column = 0; column < COLUMNS; column++) {
                sums[at + column] += other.sums[COLUMNS * i + column];
            }
        }
    }

    /** Counts pixels of a pattern. */
    private int slot(long pattern, int count) {
        if (2 * size > patterns.length) {
            grow();
        }
        int at = place(patterns, counts, pattern);
        if (counts[at] == 0) {
            patterns[at] = pattern;
            size++;
        }
        counts[at] += count;
        return at;
    }

    private static int place(long[] patterns, int[] counts, long pattern) {
        int mask = patterns.length - 1;
        int at = (int) ((pattern * 0x9E3779B97F4A7C15L) >>> 32) & mask;
        while (counts[at] != 0 && patterns[at] != pattern) {
            at = (at + 1) & mask;
        }
        return at;
    }

    private void grow() {
        long[] wider = new long[2 * patterns.length];
        int[] widerCounts = new int[wider.length];
        double[] widerSums = new double[COLUMNS * wider.length];
        for (int i = 0; i < patterns.length; i++) {
            if (counts[i] != 0) {
                int at = place(wider, widerCounts, patterns[i]);
                wider[at] = patterns[i];
                widerCounts[at] = counts[i];
                System.arraycopy(sums, COLUMNS * i, widerSums, COLUMNS * at, COLUMNS);
            }
        }
        patterns = wider;
        counts = widerCounts;
        sums = widerSums;
    }

    private int[] inOrder() {
        Integer[] order = new Integer[size];
        int next = 0;
        for (int i = 0; i < patterns.length; i++) {
            if (counts[i] != 0) {
                order[next++] = i;
            }
        }
        Arrays.sort(order, (one, two) -> Long.compare(patterns[one], patterns[two]));
        return Arrays.stream(order).mapToInt(i -> i).toArray();
    }

    /** Takes patterns in the order of their numbers. */
    interface Taker {
        /**
         * Takes one.
         *
         * @param means of the columns but {@link #HELD}; where the pad was held up nowhere, the root is that of nothing wiped. Used again
         */
        void take(long pattern, int count, float[] means);
    }

    /** Hands on every pattern. */
    void each(Taker taker) {
        float[] means = new float[COLUMNS];
        for (int i : inOrder()) {
            for (int column = 0; column < COLUMNS; column++) {
                means[column] = (float) (sums[COLUMNS * i + column] / counts[i]);
            }
            double held = sums[COLUMNS * i + HELD];
            means[ROOT] = held > 0 ? (float) (sums[COLUMNS * i + ROOT] / held) : means[FULL];
            taker.take(patterns[i], counts[i], means);
        }
    }

    /** For keeping. */
    byte[] bytes() {
        ByteBuffer bytes =
                ByteBuffer.allocate(8 + size * (12 + 4 * COLUMNS)).putInt(MAGIC).putInt(size);
        for (int i : inOrder()) {
            bytes.putLong(patterns[i]).putInt(counts[i]);
            for (int column = 0; column < COLUMNS; column++) {
                bytes.putFloat((float) sums[COLUMNS * i + column]);
            }
        }
        return bytes.array();
    }

    /** What was kept; empty if it is something else. */
    static Optional<PatternTally> of(ByteBuffer bytes) {
        if (bytes.remaining() < 8 || bytes.getInt() != MAGIC) {
            return Optional.empty();
        }
        int size = bytes.getInt();
        if (size < 1 || bytes.remaining() != (long) size * (12 + 4 * COLUMNS)) {
            return Optional.empty();
        }
        PatternTally tally = new PatternTally();
        for (int i = 0; i < size; i++) {
            long pattern = bytes.getLong();
            int count = bytes.getInt();
            if (count < 1) {
                return Optional.empty();
            }
            int at = COLUMNS * tally.slot(pattern, count);
            for (int column = 0; column < COLUMNS; column++) {
                tally.sums[at + column] = bytes.getFloat();
            }
        }
        return Optional.of(tally);
    }
}
