package greyground.plate.neighbourhood;

import java.util.Arrays;

/**
 * What the middle pixel of each pattern prints. Most patterns are told by the 21 pixels of {@link Neighbourhood#INNER}; where prints
 * spread within one of those, the wider disc decides. A pattern that was never seen goes by the mean of the widest disc that was: 21
 * pixels, else the nine next to it, else its own bit.
 *
 * <p>Entries are numbered: 0 is clear film, 1 solid black. Nothing changes once it is built.
 */
final class NeighbourhoodTable {
    /** Columns of an entry. */
    static final int ROOT = 0;

    static final int FULL = 1;
    static final int LEAST_DEPTH = 2;
    static final int COVERED = 3;
    static final int RELIEF = 4;
    private static final int COLUMNS = 5;

    /** Standard deviation of R^(1/n) within an inner pattern up to which it decides alone: a tenth of a unit of L* over a cell's pixels. */
    private static final double MOST_SPREAD = 0.01;

    private static final int INNER_PATTERNS = 1 << 21;
    private static final int NINE_PATTERNS = 1 << 9;

    private final Neighbourhood disc;
    private final int lamp;
    /** Entry of an inner pattern; {@code ~entry} where the wider disc decides, or would if it were known. */
    private final int[] inner;

    private final boolean[] known;
    private long[] wide;
    private int[] wideEntries;
    private int wideCount;
    private float[][] columns = new float[COLUMNS][1 << 12];
    private int entries;

    private NeighbourhoodTable(Neighbourhood disc, int lamp, int[] inner, boolean[] known) {
        this.disc = disc;
        this.lamp = lamp;
        this.inner = inner;
        this.known = known;
        this.wide = new long[1 << 12];
        this.wideEntries = new int[1 << 12];
    }

    /**
     * Builds a table.
     *
     * @param lamp corner that lights the copper, as {@link Neighbourhood#corner} counts them
     */
    static NeighbourhoodTable of(Neighbourhood disc, int lamp, PatternTally tally) {
        NeighbourhoodTable table =
                new NeighbourhoodTable(disc, lamp, new int[INNER_PATTERNS], new boolean[INNER_PATTERNS]);
        Means inner = new Means(INNER_PATTERNS);
        Means nine = new Means(NINE_PATTERNS);
        float[] plain = new float[2 * COLUMNS];
        tally.each((pattern, count, means) -> table.turns(pattern, means, (turned, values) -> {
            int key = disc.innerOf(turned);
            inner.add(key, count, values);
            nine.add(nine(key), count, values);
            if (turned == 0 || turned == (1L << disc.bits()) - 1) {
                System.arraycopy(values, 0, plain, turned == 0 ? 0 : COLUMNS, COLUMNS);
            }
        }));
        table.entry(Arrays.copyOf(plain, COLUMNS));
        table.entry(Arrays.copyOfRange(plain, COLUMNS, 2 * COLUMNS));
        int[] fallback = new int[NINE_PATTERNS];
        for (int i = 0; i < NINE_PATTERNS; i++) {
            fallback[i] = nine.has(i) ? table.entry(nine.mean(i)) : (i >> 4) & 1;
        }
        for (int key = 0; key < INNER_PATTERNS; key++) {
            if (inner.has(key)) {
                table.known[key] = true;
                int entry = table.entry(inner.mean(key));
                table.inner[key] = inner.spread(key) <= MOST_SPREAD ? entry : ~entry;
            } else {
                table.inner[key] = ~fallback[nine(key)];
            }
        }
        table.addWide(tally);
        return table;
    }

    /** The same table, and what it did not know before. */
    NeighbourhoodTable with(PatternTally more) {
        NeighbourhoodTable table = new NeighbourhoodTable(disc, lamp, inner.clone(), known.clone());
        table.wide = wide.clone();
        table.wideEntries = wideEntries.clone();
        table.wideCount = wideCount;
        for (int column = 0; column < COLUMNS; column++) {
            table.columns[column] = columns[column].clone();
        }
        table.entries = entries;
        Means news = new Means(INNER_PATTERNS);
        more.each((pattern, count, means) -> table.turns(pattern, means, (turned, values) -> {
            int key = disc.innerOf(turned);
            if (!known[key]) {
                news.add(key, count, values);
            }
        }));
        for (int key = 0; key < INNER_PATTERNS; key++) {
            if (news.has(key)) {
                table.inner[key] = ~table.entry(news.mean(key));
            }
        }
        table.addWide(more);
        return table;
    }

    private void addWide(PatternTally tally) {
        tally.each((pattern, count, means) -> turns(pattern, means, (turned, values) -> {
            if (inner[disc.innerOf(turned)] < 0 && wideEntry(turned) < 0 && turned != 0) {
                put(turned, entry(values));
            }
        }));
    }

    /** Takes a pattern turned in one of eight ways. */
    private interface Turned {
        void take(long pattern, float[] values);
    }

    private void turns(long pattern, float[] means, Turned taker) {
        float[] values = new float[COLUMNS];
        values[ROOT] = means[PatternTally.ROOT];
        values[FULL] = means[PatternTally.FULL];
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
            for (int column = 0; column < COLUMNS; column++) {
                columns[column] = Arrays.copyOf(columns[column], 2 * entries);
            }
        }
        for (int column = 0; column < COLUMNS; column++) {
            columns[column][entries] = values[column];
        }
        return entries++;
    }

    private void put(long pattern, int entry) {
        if (2 * wideCount > wide.length) {
            long[] before = wide;
            int[] beforeEntries = wideEntries;
            wide = new long[2 * before.length];
            wideEntries = new int[wide.length];
            for (int i = 0; i < before.length; i++) {
                if (before[i] != 0) {
                    int at = slot(before[i]);
                    wide[at] = before[i];
                    wideEntries[at] = beforeEntries[i];
                }
            }
        }
        int at = slot(pattern);
        wide[at] = pattern;
        wideEntries[at] = entry;
        wideCount++;
    }

    private int slot(long pattern) {
        int mask = wide.length - 1;
        int at = (int) ((pattern * 0x9E3779B97F4A7C15L) >>> 32) & mask;
        while (wide[at] != 0 && wide[at] != pattern) {
            at = (at + 1) & mask;
        }
        return at;
    }

    private int wideEntry(long pattern) {
        int at = slot(pattern);
        return wide[at] == 0 ? -1 : wideEntries[at];
    }

    private static int nine(int inner) {
        return (((inner >> 14) & 7) << 6) | (((inner >> 9) & 7) << 3) | ((inner >> 4) & 7);
    }

    /** Values of a column by entry. */
    float[] column(int column) {
        return columns[column];
    }

    /** Patterns that have an entry of their own. */
    int patterns() {
        return wideCount;
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

    /** Sums of columns under keys. */
    private static final class Means {
        private final int[] place;
        private int size;
        private double[] sums = new double[STRIDE << 10];

        /** Columns, count, sum of squared roots. */
        private static final int STRIDE = COLUMNS + 2;

        Means(int keys) {
            place = new int[keys];
        }

        void add(int key, int count, float[] values) {
            if (place[key] == 0) {
                place[key] = ++size;
                if (STRIDE * size > sums.length) {
                    sums = Arrays.copyOf(sums, 2 * sums.length);
                }
            }
            int at = STRIDE * (place[key] - 1);
            for (int column = 0; column < COLUMNS; column++) {
                sums[at + column] += (double) count * values[column];
            }
            sums[at + COLUMNS] += count;
            sums[at + COLUMNS + 1] += (double) count * values[ROOT] * values[ROOT];
        }

        boolean has(int key) {
            return place[key] > 0;
        }

        float[] mean(int key) {
            int at = STRIDE * (place[key] - 1);
            float[] mean = new float[COLUMNS];
            for (int column = 0; column < COLUMNS; column++) {
                mean[column] = (float) (sums[at + column] / sums[at + COLUMNS]);
            }
            return mean;
        }

        double spread(int key) {
            int at = STRIDE * (place[key] - 1);
            double mean = sums[at + ROOT] / sums[at + COLUMNS];
            return Math.sqrt(Math.max(0, sums[at + COLUMNS + 1] / sums[at + COLUMNS] - mean * mean));
        }
    }
}
