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

    private static final int COUNT = RELIEF + 4;
    static final int COLUMNS = COUNT + 1;

    private static final int MAGIC = 0x474E4231;
    private static final int RECORD_BYTES = Long.BYTES + COLUMNS * Float.BYTES;

    private final Map<Long, double[]> sums = new HashMap<>();

    /** Adds a pixel's values, its corners turned with it. */
    void add(Neighbourhood disc, long pattern, double[] values) {
        int turn = disc.leastTurn(pattern);
        double[] sum = sum(disc.turned(pattern, turn));
        for (int column = 0; column < RELIEF; column++) {
            sum[column] += values[column];
        }
        for (int corner = 0; corner < 4; corner++) {
            sum[RELIEF + Neighbourhood.corner(corner, turn)] += values[RELIEF + corner];
        }
        sum[COUNT]++;
    }

    private double[] sum(long pattern) {
        double[] sum = sums.get(pattern);
        if (sum == null) {
            sum = new double[COLUMNS];
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
            for (int column = 0; column < COLUMNS; column++) {
                sum[column] += more[column];
            }
        });
    }

    /** Takes patterns in the order of their numbers. */
    interface Taker {
        /** Takes one and the means of its columns; where the pad was held up nowhere, the root is that of nothing wiped. */
        void take(long pattern, int count, float[] means);
    }

    /** Hands on every pattern. */
    void each(Taker taker) {
        for (long pattern : sorted()) {
            double[] sum = sum(pattern);
            float[] means = new float[COLUMNS];
            for (int column = 0; column < COLUMNS; column++) {
                means[column] = (float) (sum[column] / sum[COUNT]);
            }
            means[ROOT] = sum[HELD] > 0 ? (float) (sum[ROOT] / sum[HELD]) : means[FULL];
            taker.take(pattern, (int) sum[COUNT], means);
        }
    }

    /** For keeping. */
    byte[] bytes() {
        ByteBuffer bytes =
                ByteBuffer.allocate(Integer.BYTES + sums.size() * RECORD_BYTES).putInt(MAGIC);
        for (long pattern : sorted()) {
            bytes.putLong(pattern);
            for (double value : sum(pattern)) {
                bytes.putFloat((float) value);
            }
        }
        return bytes.array();
    }

    /** What was kept; empty if it is something else. */
    static Optional<PatternTally> of(ByteBuffer bytes) {
        if (bytes.remaining() <= RECORD_BYTES || bytes.getInt() != MAGIC || bytes.remaining() % RECORD_BYTES != 0) {
            return Optional.empty();
        }
        PatternTally tally = new PatternTally();
        while (bytes.hasRemaining()) {
            double[] sum = tally.sum(bytes.getLong());
            for (int column = 0; column < COLUMNS; column++) {
                sum[column] = bytes.getFloat();
            }
            if (!(sum[COUNT] >= 1)) {
                return Optional.empty();
            }
        }
        return Optional.of(tally);
    }
}
