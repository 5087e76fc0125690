package greyground.plate.neighbourhood;

import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Sums of what the engine printed, under each pattern's least turn. One thread adds, and tallies are joined in a fixed order, so that
 * the sums repeat.
 */
final class PatternTally {
    /** How many pixels there are where the pad is held up by land near by. */
    static final int HELD = 0;

    /** The least depth within the pixel, in micrometres. */
    static final int LEAST_DEPTH = 1;

    static final int COVERED = 2;

    /** Brightness of the copper by the lamp's corner, four columns. */
    static final int RELIEF = 3;

    private static final int COUNT = RELIEF + 4;
    private static final int INKS = COUNT + 1;

    private static final int MAGIC = 0x474E4232;

    private final Map<Long, double[]> sums = new HashMap<>();
    private final int columns;

    /** A tally of prints in so many inks. */
    PatternTally(int inks) {
        this.columns = full(inks - 1) + 1;
    }

    /** Column of the root of the print in an ink, of pixels where the pad is held up by land near by. */
    static int root(int ink) {
        return INKS + 2 * ink;
    }

    /** Column of the root of the print in an ink if nothing were wiped. */
    static int full(int ink) {
        return INKS + 2 * ink + 1;
    }

    int inks() {
        return (columns - INKS) / 2;
    }

    /** How many columns a pixel's values have. */
    int columns() {
        return columns;
    }

    private static int recordBytes(int columns) {
        return Long.BYTES + columns * Float.BYTES;
    }

    /** Adds a pixel's values, its corners turned with it. */
    void add(Neighbourhood disc, long pattern, double[] values) {
        int turn = disc.leastTurn(pattern);
        double[] sum = sum(disc.turned(pattern, turn));
        for (int column = 0; column < columns; column++) {
            sum[column] += column < RELIEF || column > COUNT ? values[column] : 0;
        }
        for (int corner = 0; corner < 4; corner++) {
            sum[RELIEF + Neighbourhood.corner(corner, turn)] += values[RELIEF + corner];
        }
        sum[COUNT]++;
    }

    private double[] sum(long pattern) {
        double[] sum = sums.get(pattern);
        if (sum == null) {
            sum = new double[columns];
            sums.put(pattern, sum);
        }
        return sum;
    }

    private long[] sorted() {
        long[] patterns = new long[sums.size()];
        int at = 0;
        for (long pattern : sums.keySet()) {
            patterns[at++] = pattern;
        }
        Arrays.sort(patterns);
        return patterns;
    }

    /** Adds another tally. */
    void add(PatternTally other) {
        other.sums.forEach((pattern, more) -> {
            double[] sum = sum(pattern);
            for (int column = 0; column < columns; column++) {
                sum[column] += more[column];
            }
        });
    }

    /** Takes patterns in the order of their numbers. */
    interface Taker {
        /** Takes one and the means of its columns; where the pad was held up nowhere, roots are those of nothing wiped. */
        void take(long pattern, int count, float[] means);
    }

    /** Hands on every pattern. */
    void each(Taker taker) {
        for (long pattern : sorted()) {
            double[] sum = sum(pattern);
            float[] means = new float[columns];
            for (int column = 0; column < columns; column++) {
                means[column] = (float) (sum[column] / sum[COUNT]);
            }
            for (int ink = 0; ink < inks(); ink++) {
                means[root(ink)] = sum[HELD] > 0 ? (float) (sum[root(ink)] / sum[HELD]) : means[full(ink)];
            }
            taker.take(pattern, (int) sum[COUNT], means);
        }
    }

    /** For keeping. */
    byte[] bytes() {
        ByteBuffer bytes = ByteBuffer.allocate(Integer.BYTES + sums.size() * recordBytes(columns))
                .putInt(MAGIC);
        for (long pattern : sorted()) {
            bytes.putLong(pattern);
            for (double value : sum(pattern)) {
                bytes.putFloat((float) value);
            }
        }
        return bytes.array();
    }

    /** What was kept of prints in so many inks; empty if it is something else. */
    static Optional<PatternTally> of(ByteBuffer bytes, int inks) {
        PatternTally tally = new PatternTally(inks);
        int record = recordBytes(tally.columns);
        if (bytes.remaining() <= record || bytes.getInt() != MAGIC || bytes.remaining() % record != 0) {
            return Optional.empty();
        }
        while (bytes.hasRemaining()) {
            double[] sum = tally.sum(bytes.getLong());
            for (int column = 0; column < tally.columns; column++) {
                sum[column] = bytes.getFloat();
            }
            if (!(sum[COUNT] >= 1)) {
                return Optional.empty();
            }
        }
        return Optional.of(tally);
    }
}
