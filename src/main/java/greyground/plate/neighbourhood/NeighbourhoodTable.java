package greyground.plate.neighbourhood;

import java.util.Arrays;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;

/**
 * What the middle pixel of each pattern prints. Most patterns are told by the 21 pixels of {@link Neighbourhood#INNER}; where prints
 * spread within one of those, the wider disc decides. A pattern that was never seen goes by the mean of the widest disc that was: 21
 * pixels, else the nine next to it, else its own bit.
 *
 * <p>Entries are numbered: 0 is clear film, 1 solid black. Nothing changes once it is built.
 */
final class NeighbourhoodTable {
    /** Columns of an entry; those of its prints follow. */
    static final int LEAST_DEPTH = 0;

    static final int COVERED = 1;
    static final int RELIEF = 2;
    private static final int INKS = 3;

    /** Standard deviation of the first ink's R^(1/n) within an inner pattern up to which it decides alone: a tenth of a unit of L* over a cell's pixels. */
    private static final double MOST_SPREAD = 0.01;

    private static final int INNER_PATTERNS = 1 << 21;
    private static final int NINE_PATTERNS = 1 << 9;

    private final Neighbourhood disc;
    private final int lamp;
    /** Entry of an inner pattern; {@code ~entry} where the wider disc decides, or would if it were known. */
    private final int[] inner;

    private final BitSet known;
    /** Patterns of the wider disc, each with its entry beside it, since whoever asks for the one wants the other. */
    private long[] wide = new long[1 << 13];

    private int wideCount;
    private final float[][] columns;
    private int entries;

    /**
     * Builds a table.
     *
     * @param lamp corner that lights the copper, as {@link Neighbourhood#corner} counts them
     * @param before a table that shall know this besides, or null
     */
    private NeighbourhoodTable(Neighbourhood disc, int lamp, PatternTally tally, @Nullable NeighbourhoodTable before) {
        this.disc = disc;
        this.lamp = lamp;
        double[][] means = new double[INNER_PATTERNS][];
        double[][] nines = new double[NINE_PATTERNS][];
        columns = new float[full(tally.inks() - 1) + 1][1 << 12];
        float[][] plain = new float[2][columns.length];
        tally.each((pattern, count, values) -> turns(pattern, values, (turned, turnedValues) -> {
            add(means, disc.innerOf(turned), count, turnedValues);
            add(nines, nine(disc.innerOf(turned)), count, turnedValues);
            if (turned == 0 || turned == (1L << disc.bits()) - 1) {
                plain[turned == 0 ? 0 : 1] = turnedValues.clone();
            }
        }));
        if (before == null) {
            known = new BitSet(INNER_PATTERNS);
            inner = new int[INNER_PATTERNS];
            entry(plain[0]);
            entry(plain[1]);
            int[] guesses = new int[NINE_PATTERNS];
            for (int i = 0; i < NINE_PATTERNS; i++) {
                double[] sums = nines[i];
                guesses[i] = sums == null ? (i >> 4) & 1 : entry(mean(sums));
            }
            for (int key = 0; key < INNER_PATTERNS; key++) {
                inner[key] = ~guesses[nine(key)];
            }
        } else {
            known = (BitSet) before.known.clone();
            inner = before.inner.clone();
            wide = before.wide.clone();
            wideCount = before.wideCount;
            entries = before.entries;
            for (int column = 0; column < columns.length; column++) {
                columns[column] = before.columns[column].clone();
            }
        }
        for (int key = 0; key < INNER_PATTERNS; key++) {
            double[] sums = means[key];
            if (sums != null && !known.get(key)) {
                int entry = entry(mean(sums));
                inner[key] = before == null && spread(sums) <= MOST_SPREAD ? entry : ~entry;
                known.set(key);
            }
        }
        tally.each((pattern, count, values) -> turns(pattern, values, (turned, turnedValues) -> {
            if (inner[disc.innerOf(turned)] < 0 && wideEntry(turned) < 0 && turned != 0) {
                put(turned, entry(turnedValues));
            }
        }));
    }

    /** A table of a sample. */
    static NeighbourhoodTable of(Neighbourhood disc, int lamp, PatternTally tally) {
        return new NeighbourhoodTable(disc, lamp, tally, null);
    }

    /** The same table, and what it did not know before. */
    NeighbourhoodTable with(PatternTally more) {
        return new NeighbourhoodTable(disc, lamp, more, this);
    }

    /** Column of R^(1/n) of the print in one of the sample's inks. */
    static int root(int ink) {
        return INKS + 2 * ink;
    }

    /** Column of the same if nothing were wiped. */
    static int full(int ink) {
        return INKS + 2 * ink + 1;
    }

    private void add(double[][] means, int key, int count, float[] values) {
        if (means[key] == null) {
            means[key] = new double[columns.length + 2];
        }
        double[] sums = means[key];
        for (int column = 0; column < columns.length; column++) {
            sums[column] += (double) count * values[column];
        }
        sums[columns.length] += count;
        sums[columns.length + 1] += (double) count * values[root(0)] * values[root(0)];
    }

    private float[] mean(double[] sums) {
        float[] mean = new float[columns.length];
        for (int column = 0; column < columns.length; column++) {
            mean[column] = (float) (sums[column] / sums[columns.length]);
        }
        return mean;
    }

    private double spread(double[] sums) {
        double mean = sums[root(0)] / sums[columns.length];
        return Math.sqrt(Math.max(0, sums[columns.length + 1] / sums[columns.length] - mean * mean));
    }

    /** Takes a pattern turned in one of eight ways. */
    private interface Turned {
        void take(long pattern, float[] values);
    }

    private void turns(long pattern, float[] means, Turned taker) {
        float[] values = new float[columns.length];
        for (int ink = 0; root(ink) < columns.length; ink++) {
            values[root(ink)] = means[PatternTally.root(ink)];
            values[full(ink)] = means[PatternTally.full(ink)];
        }
        values[LEAST_DEPTH] = means[PatternTally.LEAST_DEPTH];
        values[COVERED] = means[PatternTally.COVERED];
        for (int turn = 0; turn < Neighbourhood.SYMMETRIES; turn++) {
            for (int corner = 0; corner < 4; corner++) {
                if (Neighbourhood.corner(corner, turn) == lamp) {
                    values[RELIEF] = means[PatternTally.RELIEF + corner];
                }
            }
            taker.take(disc.turned(pattern, turn), values);
        }
    }

    private int entry(float[] values) {
        if (entries == columns[0].length) {
            for (int column = 0; column < columns.length; column++) {
                columns[column] = Arrays.copyOf(columns[column], 2 * entries);
            }
        }
        for (int column = 0; column < columns.length; column++) {
            columns[column][entries] = values[column];
        }
        return entries++;
    }

    private void put(long pattern, int entry) {
        if (4 * wideCount > wide.length) {
            long[] before = wide;
            wide = new long[2 * before.length];
            for (int i = 0; i < before.length; i += 2) {
                if (before[i] != 0) {
                    int at = slot(before[i]);
                    wide[at] = before[i];
                    wide[at + 1] = before[i + 1];
                }
            }
        }
        int at = slot(pattern);
        wide[at] = pattern;
        wide[at + 1] = entry;
        wideCount++;
    }

    private int slot(long pattern) {
        int mask = wide.length / 2 - 1;
        int at = (int) ((pattern * 0x9E3779B97F4A7C15L) >>> 32) & mask;
        while (wide[2 * at] != 0 && wide[2 * at] != pattern) {
            at = (at + 1) & mask;
        }
        return 2 * at;
    }

    private int wideEntry(long pattern) {
        int at = slot(pattern);
        return wide[at] == 0 ? -1 : (int) wide[at + 1];
    }

    private static int nine(int inner) {
        return (((inner >> 14) & 7) << 6) | (((inner >> 9) & 7) << 3) | ((inner >> 4) & 7);
    }

    /** Values of a column by entry. */
    float[] column(int column) {
        return columns[column];
    }

    /** Bits of the entries whose value of a column is below a bound, the first in the lowest bit. */
    long[] below(int column, float bound) {
        long[] bits = new long[(entries + Long.SIZE - 1) / Long.SIZE];
        for (int entry = 0; entry < entries; entry++) {
            bits[entry >> 6] |= columns[column][entry] < bound ? 1L << entry : 0;
        }
        return bits;
    }

    /** Entry by which a pattern goes that is not known. */
    int guess(long pattern) {
        return ~inner[disc.innerOf(pattern)];
    }

    /** Patterns of the wider disc that are known. */
    NearestPatterns patterns() {
        long[] patterns = new long[wideCount];
        int[] own = new int[wideCount];
        int count = 0;
        for (int i = 0; i < wide.length; i += 2) {
            if (wide[i] != 0) {
                patterns[count] = wide[i];
                own[count++] = (int) wide[i + 1];
            }
        }
        return new NearestPatterns(disc, patterns, own);
    }

    /** Entry of a pattern of the wider disc, or {@code ~entry} of the guess where it is not known. */
    int entryOf(long pattern) {
        int entry = inner[disc.innerOf(pattern)];
        if (entry >= 0) {
            return entry;
        }
        int own = wideEntry(pattern);
        return own >= 0 ? own : entry;
    }

    /** Takes pixels whose pattern has no entry of its own. */
    interface Unseen {
        void take(int x, int y, long pattern);
    }

    /**
     * Reads a row of film.
     *
     * @param entries receives the entry of each pixel
     * @param rows room for the disc's rows
     */
    void row(FilmBits film, int from, int count, int y, int[] entries, long[] rows, Unseen unseen) {
        int first = disc.radius() - Neighbourhood.INNER.radius();
        for (int start = 0; start < count; start += Neighbourhood.PIXELS_OF_A_WORD) {
            int pixels = Math.min(Neighbourhood.PIXELS_OF_A_WORD, count - start);
            film.rows(from + start, y, rows);
            long middle = rows[disc.radius()] << Neighbourhood.MOST_RADIUS;
            for (int i = 0; i < pixels; i++) {
                entries[start + i] = (int) (middle >>> (63 - i)) & 1;
            }
            long mixed = disc.mixed(rows) << Neighbourhood.MOST_RADIUS;
            for (int i = Long.numberOfLeadingZeros(mixed); i < pixels; i = Long.numberOfLeadingZeros(mixed)) {
                mixed &= ~(Long.MIN_VALUE >>> i);
                int entry = inner[Neighbourhood.inner(rows, first, i)];
                if (entry < 0) {
                    long pattern = disc.pattern(rows, 0, i);
                    int own = wideEntry(pattern);
                    if (own < 0) {
                        unseen.take(from + start + i, y, pattern);
                        own = ~entry;
                    }
                    entry = own;
                }
                entries[start + i] = entry;
            }
        }
    }
}
