package greyground.plate.neighbourhood;

import greyground.plate.FilmPatch;
import greyground.plate.PlateConditions;
import greyground.plate.PlateMap;
import greyground.plate.PlateWindow;
import greyground.plate.Reach;
import greyground.raster.BitPlane;
import greyground.raster.Crew;
import greyground.raster.DiscReach;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Future;
import java.util.stream.IntStream;

/**
 * A window of a plate, read from its film by a table of neighbourhoods: print, covered share and copper in one pass. What the table
 * does not know is computed by the engine on blocks of this film, and the pixels in question are set right; where black is wide the pad
 * gets its own step.
 *
 * <p>Work is cut into bands of cell rows, each of which alone adds to its cells, and everything else goes in the film's order; so threads
 * can't change a picture. Nothing that one film teaches is kept for another.
 */
public final class NeighbourhoodPlate {
    /** Film pixels across a cell from which on it may be read so; finer cells show what lies within a pixel. */
    public static final double LEAST_PIXELS = 4;

    /** Film rows of a band, about. */
    private static final int BAND_ROWS = 256;

    /** Blocks of a film that the engine computes at most; drawings gain by so many (measured, docs/virtual-plate.md). */
    private static final int MOST_BLOCKS = 450;

    /** Share of the pixels that may be guessed: photographs gain nothing by less (measured). */
    private static final double GUESSED = 0.005;

    /** Share of the farthest that anything reaches, of which blocks have film round them: 0.4 and 1 print the same within 0.0001 L* rms (measured). */
    private static final double MARGIN_SHARE = 0.5;

    /** Film pixels across a stretch in which the pad is followed. */
    private static final int STRETCH = 128;

    private final NeighbourhoodSample sample;
    private final FilmBits film;
    private final PlateWindow window;
    private final Tents across;
    private final Tents down;

    /**
     * Takes a film.
     *
     * @param film of bits, read with {@link #reachMicrometres} about the window
     * @param sample of its grain under the conditions of the plate
     */
    public NeighbourhoodPlate(FilmBits film, PlateWindow window, NeighbourhoodSample sample) {
        this.film = film;
        this.window = window;
        this.sample = sample;
        this.across = new Tents(
                window.leftMicrometres(), window.cellMicrometres(), window.columns(), film.pitchMicrometres());
        this.down =
                new Tents(window.topMicrometres(), window.cellMicrometres(), window.rows(), film.pitchMicrometres());
    }

    /** How much film about a window decides what it shows. */
    public static double reachMicrometres(PlateConditions conditions, PlateWindow window, double pitchMicrometres) {
        double blocks = UnseenPixels.BLOCK * pitchMicrometres + Reach.besidesPad(conditions, pitchMicrometres);
        return window.cellMicrometres() / 2 + Math.max(Reach.padMicrometres(conditions), blocks);
    }

    /** What can be seen: the print in each of the sample's inks, what is covered, the copper. */
    public enum Look {
        PRINT,
        COVERED,
        RELIEF
    }

    private int[] columns(List<Look> looks) {
        return looks.stream()
                .flatMapToInt(look -> switch (look) {
                    case PRINT -> IntStream.range(0, sample.inks().size()).map(NeighbourhoodTable::root);
                    case COVERED -> IntStream.of(NeighbourhoodTable.COVERED);
                    case RELIEF -> IntStream.of(NeighbourhoodTable.RELIEF);
                })
                .toArray();
    }

    /**
     * What was seen.
     *
     * @param maps in the order of asking, one of the print for each ink
     * @param pixels of film read
     * @param computed pixels whose pattern the engine computed on this film
     * @param guessed pixels whose pattern was never seen, which go by what lies nearest them
     * @param wiped pixels in wide blacks, where the pad was followed by itself
     */
    public record Seen(List<PlateMap> maps, long pixels, long computed, long guessed, long wiped) {}

    /** Cell rows {@code first} to {@code end - 1}. */
    private record Band(int first, int end) {}

    /**
     * Reads.
     *
     * @param fromRight whether the lamp stands to the right
     * @param threads at least 1
     */
    public Seen look(List<Look> looks, boolean fromRight, int threads, Progress progress) throws IOException {
        NeighbourhoodTable table = NeighbourhoodTable.of(sample.disc(), fromRight ? 1 : 0, sample.tally());
        int[] columns = columns(looks);
        List<PlateMap> maps = IntStream.of(columns)
                .mapToObj(column -> new PlateMap(window, new float[window.area()]))
                .toList();
        BitPlane land = new BitPlane((across.count() + BitPlane.WORD - 1) / BitPlane.WORD, down.count());
        int rows = Math.max(1, (int) (BAND_ROWS * film.pitchMicrometres() / window.cellMicrometres()));
        List<Band> bands = new ArrayList<>();
        for (int first = 0; first < window.rows(); first += rows) {
            bands.add(new Band(first, Math.min(window.rows(), first + rows)));
        }
        try (Crew crew = new Crew("neighbourhoods", threads)) {
            List<UnseenPixels> unseen =
                    each(crew, bands, band -> read(table, band, columns, maps, land), progress.part(0, 0.4));
            long pixels = (long) across.count() * down.count();
            List<UnseenPixels.Block> blocks =
                    UnseenPixels.best(unseen, sample.disc(), MOST_BLOCKS, (long) (GUESSED * pixels));
            PatternTally taught = new PatternTally(sample.inks().size());
            each(crew, blocks, block -> computed(block, looks.contains(Look.RELIEF)), progress.part(0.4, 0.8))
                    .forEach(taught::add);
            NeighbourhoodTable more = blocks.isEmpty() ? table : table.with(taught);
            long[] counts = new long[2];
            NearestPatterns known = more.patterns();
            List<int[]> entries = each(crew, unseen, part -> part.entries(more, known), Progress.NONE);
            for (int i = 0; i < unseen.size(); i++) {
                int[] own = entries.get(i);
                int[] next = {0};
                unseen.get(i).each((x, y, pattern) -> {
                    int entry = own[next[0]++];
                    int now = entry < 0 ? ~entry : entry;
                    counts[entry < 0 ? 1 : 0]++;
                    correct(columns, maps, x, y, more, table.guess(pattern), now);
                    setLand(land, x, y, more.column(NeighbourhoodTable.LEAST_DEPTH)[now]);
                });
            }
            long wiped = 0;
            if (looks.contains(Look.PRINT)) {
                int first = looks.indexOf(Look.PRINT);
                List<PlateMap> prints =
                        maps.subList(first, first + sample.inks().size());
                for (long some : each(crew, bands, band -> pad(more, band, prints, land), progress.part(0.8, 1))) {
                    wiped += some;
                }
            }
            return new Seen(maps, pixels, counts[0], counts[1], wiped);
        }
    }

    /** Work on one of many parts. */
    private interface Work<P, R> {
        R of(P part);
    }

    private static <P, R> List<R> each(Crew crew, List<P> parts, Work<P, R> work, Progress progress)
            throws IOException {
        List<Future<R>> underWay = new ArrayList<>();
        for (P part : parts) {
            underWay.add(crew.submit(() -> work.of(part)));
        }
        List<R> done = new ArrayList<>();
        for (Future<R> one : underWay) {
            done.add(crew.result(one));
            progress.done((double) done.size() / parts.size());
        }
        return done;
    }

    private int endOf(Band band) {
        return band.end() == window.rows() ? down.first() + down.count() : down.firstOf(band.end() + 1);
    }

    private UnseenPixels read(NeighbourhoodTable table, Band band, int[] looks, List<PlateMap> maps, BitPlane land) {
        UnseenPixels unseen = new UnseenPixels();
        int columns = window.columns();
        double[][] sums = new double[looks.length][(band.end() - band.first()) * columns];
        int[] entries = new int[across.count()];
        long[] words = new long[2 * sample.disc().radius() + 1];
        long[] lands = table.below(NeighbourhoodTable.LEAST_DEPTH, PixelPrints.LAND_MICROMETRES);
        for (int y = down.firstOf(band.first()); y < endOf(band); y++) {
            int below = down.below(y);
            double share = down.share(y);
            // A row between two bands is read by both; its unseen pixels are the first one's.
            boolean own = below >= band.first() || band.first() == 0;
            table.row(film, across.first(), entries.length, y, entries, words, own ? unseen : (x, line, pattern) -> {});
            for (int look = 0; look < looks.length; look++) {
                double[] row = new double[columns + 2];
                across.sum(table.column(looks[look]), entries, row);
                add(sums[look], below - band.first(), 1 - share, row, columns);
                add(sums[look], below + 1 - band.first(), share, row, columns);
            }
            if (own) {
                land(entries, lands, land, y - down.first());
            }
        }
        for (int look = 0; look < looks.length; look++) {
            float[] values = maps.get(look).values();
            for (int i = 0; i < sums[look].length; i++) {
                values[band.first() * columns + i] = (float)
                        (sums[look][i] / (down.weight(band.first() + i / columns) * across.weight(i % columns)));
            }
        }
        return unseen;
    }

    private void land(int[] entries, long[] lands, BitPlane land, int row) {
        int from = row * land.wordsPerRow();
        if (row == 0 || row == down.count() - 1) {
            Arrays.fill(land.words(), from, from + land.wordsPerRow(), -1);
            return;
        }
        for (int word = 0; word < land.wordsPerRow(); word++) {
            int first = word * BitPlane.WORD;
            int end = Math.min(first + BitPlane.WORD, entries.length);
            // What lies past the last column counts as rim.
            long bits = -1;
            for (int i = first; i < end; i++) {
                bits = (bits << 1) | ((lands[entries[i] >> 6] >>> entries[i]) & 1);
            }
            int past = first + BitPlane.WORD - end;
            land.words()[from + word] = past == 0 ? bits : (bits << past) | ((1L << past) - 1);
        }
        land.words()[from] |= Long.MIN_VALUE;
        land.words()[from + ((entries.length - 1) >> 6)] |= Long.MIN_VALUE >>> (entries.length - 1);
    }

    private static void add(double[] sums, int row, double weight, double[] values, int columns) {
        if (row >= 0 && row * columns < sums.length) {
            for (int column = 0; column < columns; column++) {
                sums[row * columns + column] += weight * values[column + 1];
            }
        }
    }

    private PatternTally computed(UnseenPixels.Block block, boolean withRelief) {
        PlateConditions conditions = sample.plate().conditions();
        double reach =
                MARGIN_SHARE * Reach.besidesPad(conditions, sample.plate().widestPixelMicrometres());
        int margin = (int) Math.ceil(reach / film.pitchMicrometres());
        FilmPatch patch = film.square(block.x() - margin, block.y() - margin, UnseenPixels.BLOCK + 2 * margin);
        return sample.engine(withRelief).of(patch, margin);
    }

    private void correct(
            int[] looks, List<PlateMap> maps, int x, int y, NeighbourhoodTable table, int before, int now) {
        for (int look = 0; look < looks.length && before != now; look++) {
            float[] column = table.column(looks[look]);
            add(maps.get(look).values(), x, y, 0, window.rows(), column[now] - column[before]);
        }
    }

    /** Adds to the cells round a pixel that lie within some rows of cells. */
    private void add(float[] values, int x, int y, int firstRow, int endRow, double change) {
        int row = down.below(y);
        int column = across.below(x);
        for (int k = 0; k < 4; k++) {
            int cellRow = row + (k >> 1);
            int cellColumn = column + (k & 1);
            if (cellRow >= firstRow && cellRow < endRow && cellColumn >= 0 && cellColumn < window.columns()) {
                double weight = ((k >> 1) == 0 ? 1 - down.share(y) : down.share(y))
                        * ((k & 1) == 0 ? 1 - across.share(x) : across.share(x))
                        / (down.weight(cellRow) * across.weight(cellColumn));
                values[cellRow * window.columns() + cellColumn] += (float) (weight * change);
            }
        }
    }

    /** The outermost pixels read count as land, so that the pad is not followed where nothing is known. */
    private boolean isRim(int column, int row) {
        return column == 0 || column >= across.count() - 1 || row == 0 || row == down.count() - 1;
    }

    private void setLand(BitPlane land, int x, int y, float leastDepth) {
        int at = (y - down.first()) * land.wordsPerRow() + ((x - across.first()) >> 6);
        long bit = Long.MIN_VALUE >>> (x - across.first());
        boolean isLand = isRim(x - across.first(), y - down.first()) || leastDepth < PixelPrints.LAND_MICROMETRES;
        land.words()[at] = isLand ? land.words()[at] | bit : land.words()[at] & ~bit;
    }

    /** Follows the pad where land is far; returns how many pixels. */
    private long pad(NeighbourhoodTable table, Band band, List<PlateMap> prints, BitPlane land) {
        PlateConditions conditions = sample.plate().conditions();
        double held = PixelPrints.heldMicrometres(conditions) / film.pitchMicrometres();
        int first = down.firstOf(band.first());
        int end = endOf(band);
        int about = 2 * (int) Math.ceil(held);
        int top = Math.max(0, first - down.first() - about);
        int bottom = Math.min(land.rows(), end - down.first() + about);
        BitPlane far = DiscReach.within(land.rows(top, bottom - top), held).turned();
        if (far.isEmpty()) {
            return 0;
        }
        far = DiscReach.within(far, held, first - down.first() - top, end - first);
        List<PadInBlacks> pads = sample.inks().stream()
                .map(ink -> new PadInBlacks(conditions, ink))
                .toList();
        int reach = (int) Math.ceil(Reach.padMicrometres(conditions) / film.pitchMicrometres());
        long count = 0;
        for (int from = 0; from < across.count(); from += STRETCH) {
            int width = Math.min(STRETCH, across.count() - from);
            int firstFar = end - first;
            int lastFar = -1;
            for (int y = 0; y < end - first; y++) {
                if (far.count(y, from, from + width) > 0) {
                    firstFar = Math.min(firstFar, y);
                    lastFar = y;
                }
            }
            if (lastFar < 0) {
                continue;
            }
            int wide = width + 2 * reach;
            int tall = lastFar + 1 - firstFar + 2 * reach;
            int left = across.first() + from - reach;
            int upper = first + firstFar - reach;
            float[] least = new float[wide * tall];
            int[] own = new int[width * (lastFar + 1 - firstFar)];
            int[] entries = new int[wide];
            long[] words = new long[2 * sample.disc().radius() + 1];
            for (int y = 0; y < tall; y++) {
                table.row(film, left, wide, upper + y, entries, words, (x, line, pattern) -> {});
                for (int x = 0; x < wide; x++) {
                    least[y * wide + x] = table.column(NeighbourhoodTable.LEAST_DEPTH)[entries[x]];
                }
                int into = (y - reach) * width;
                if (into >= 0 && into < own.length) {
                    System.arraycopy(entries, reach, own, into, width);
                }
            }
            float[] levels = PadInBlacks.levels(conditions, least, wide, film.pitchMicrometres());
            for (int y = firstFar; y <= lastFar; y++) {
                boolean counted = down.below(first + y) >= band.first() || band.first() == 0;
                for (int x = far.next(y, from, from + width, true); x < from + width; ) {
                    int entry = own[(y - firstFar) * width + x - from];
                    float level = levels[(y - firstFar + reach) * wide + x - from + reach];
                    for (int ink = 0; ink < pads.size(); ink++) {
                        double full = pads.get(ink).root(table.column(NeighbourhoodTable.full(ink))[entry], level);
                        double change = full - table.column(NeighbourhoodTable.root(ink))[entry];
                        float[] print = prints.get(ink).values();
                        add(print, across.first() + x, first + y, band.first(), band.end(), change);
                    }
                    count += counted ? 1 : 0;
                    x = far.next(y, x + 1, from + width, true);
                }
            }
        }
        return count;
    }
}
