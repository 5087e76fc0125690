package greyground.plate;

import greyground.quantity.Refusal;
import greyground.raster.Crew;
import greyground.raster.Progress;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.Future;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;

/**
 * Looks at any window of a plate, large or small: the film that really lies on it goes through the {@link VirtualPlate} in
 * tiles, each with as much plate round it as can change it ({@link Reach}), and what is seen is averaged over the window's
 * cells. So lines, wide blacks and grain come out as the model has them, not as an even tone would.
 *
 * <p>Tiles are whole cells, placed from the window's corner and of one size whatever the number of threads, which therefore
 * can't change a picture. Memory holds the tiles in work, two strips of film and the picture.
 */
public final class WholePlate {
    /** Side of a tile in pixels of the virtual plate: large beside the reach, small beside memory. */
    private static final int TILE_PIXELS = 1536;

    /** What a tile holds while it is computed: states, and planes on the way to them. */
    private static final double BYTES_PER_PIXEL = 72;

    private static final double MEMORY_SHARE = 0.6;

    private final PlateFilm positive;
    private final @Nullable PlateFilm screen;
    private final double widestPixelMicrometres;
    private final int tilePixels;

    /**
     * Takes a plate's films.
     *
     * @param screen of photogravure, of the positive's size, or null
     * @param widestPixelMicrometres film pixels are split until they are no wider
     */
    public WholePlate(PlateFilm positive, @Nullable PlateFilm screen, double widestPixelMicrometres) {
        this(positive, screen, widestPixelMicrometres, TILE_PIXELS);
    }

    WholePlate(PlateFilm positive, @Nullable PlateFilm screen, double widestPixelMicrometres, int tilePixels) {
        this.positive = positive;
        this.screen = screen;
        this.widestPixelMicrometres = widestPixelMicrometres;
        this.tilePixels = tilePixels;
    }

    /**
     * Something to look at.
     *
     * @param conditions how the plate is made
     * @param view what is seen of it
     */
    public record Look(PlateConditions conditions, PlateView view) {}

    /** Width of the pixels that a plate of this film is computed at. */
    public static double pixelMicrometres(double filmPitchMicrometres, double widestPixelMicrometres) {
        return filmPitchMicrometres / Math.ceil(filmPitchMicrometres / widestPixelMicrometres - 1e-9);
    }

    /**
     * Looks at a window, once through the film.
     *
     * @param looks in any number; those under equal conditions share one computation
     * @param threads at least 1
     * @return one map for each look
     */
    public List<PlateMap> look(PlateWindow window, List<Look> looks, int threads, Progress progress)
            throws IOException {
        if (threads < 1) {
            throw Refusal.use("the plate is to be computed by " + threads + " threads; it takes 1 or more");
        }
        List<PlateMap> maps = looks.stream()
                .map(look -> new PlateMap(window, new float[window.area()]))
                .toList();
        double pixel = pixelMicrometres(positive.pitchMicrometres(), widestPixelMicrometres);
        double reach = looks.stream()
                        .mapToDouble(look -> Reach.micrometres(look.conditions(), pixel))
                        .max()
                        .orElse(0)
                + CellMeans.reachMicrometres(window.cellMicrometres(), pixel);
        int cells = Math.max(1, (int) Math.round(tilePixels * pixel / window.cellMicrometres()));
        Semaphore memory = new Semaphore(tilesAtOnce(threads, tilePixels + 2 * reach / pixel));
        ForkJoinPool workers = new ForkJoinPool(threads);
        try (PlateFilm.Rows rows = positive.open();
                PlateFilm.Rows screenRows = screen == null ? null : screen.open()) {
            ArrayDeque<List<Future<?>>> underWay = new ArrayDeque<>();
            int strips = (window.rows() + cells - 1) / cells;
            for (int strip = 0; strip < strips; strip++) {
                if (underWay.size() == 2) {
                    join(underWay.remove());
                }
                progress.done((double) strip / strips);
                int firstRow = strip * cells;
                int endRow = Math.min(window.rows(), firstRow + cells);
                Span down = span(window.topMicrometres(), firstRow, endRow, window.cellMicrometres(), reach);
                PlateFilm.Strip film = rows.strip(down.first(), down.count());
                PlateFilm.Strip dots = screenRows == null ? null : screenRows.strip(down.first(), down.count());
                List<Future<?>> tiles = new ArrayList<>();
                for (int column = 0; column < window.columns(); column += cells) {
                    int firstColumn = column;
                    int endColumn = Math.min(window.columns(), column + cells);
                    Span across = span(window.leftMicrometres(), column, endColumn, window.cellMicrometres(), reach);
                    memory.acquireUninterruptibly();
                    tiles.add(workers.submit(() -> {
                        try {
                            FilmPatch patch = film.cut(across.first(), across.count());
                            FilmPatch under = dots == null ? null : dots.cut(across.first(), across.count());
                            tile(patch, under, looks, maps, new CellRange(firstColumn, endColumn, firstRow, endRow));
                        } finally {
                            memory.release();
                        }
                    }));
                }
                underWay.add(tiles);
            }
            for (List<Future<?>> tiles : underWay) {
                join(tiles);
            }
            progress.done(1);
            return maps;
        } finally {
            Crew.end(workers);
        }
    }

    private static void join(List<Future<?>> tiles) throws IOException {
        for (Future<?> tile : tiles) {
            Crew.joined(tile);
        }
    }

    /** As many as the threads, but no more than memory holds; the engine shares one tile among all threads as well. */
    private static int tilesAtOnce(int threads, double sidePixels) {
        double room = MEMORY_SHARE * Runtime.getRuntime().maxMemory();
        return (int) Math.max(1, Math.min(threads, room / (BYTES_PER_PIXEL * sidePixels * sidePixels)));
    }

    /** Cells of the window that a tile fills. */
    record CellRange(int firstColumn, int endColumn, int firstRow, int endRow) {}

    /** Film pixels along one axis. */
    private record Span(int first, int count) {}

    private Span span(double start, int firstCell, int endCell, double cell, double reach) {
        double pitch = positive.pitchMicrometres();
        int first = (int) Math.floor((start + firstCell * cell - reach) / pitch);
        int end = (int) Math.ceil((start + endCell * cell + reach) / pitch);
        return new Span(first, end - first);
    }

    private void tile(
            FilmPatch patch, @Nullable FilmPatch under, List<Look> looks, List<PlateMap> maps, CellRange range) {
        PlateConditions last = null;
        boolean lastOfFilm = false;
        PlateStates states = null;
        for (int i = 0; i < looks.size(); i++) {
            PlateConditions conditions = looks.get(i).conditions();
            boolean ofFilm = looks.get(i).view().seesFilmAlone();
            if (states == null || ofFilm != lastOfFilm || !conditions.equals(last)) {
                VirtualPlate plate = new VirtualPlate(conditions, under, widestPixelMicrometres);
                states = ofFilm ? plate.filmAlone(patch) : plate.statesBeyondFilm(patch);
                last = conditions;
                lastOfFilm = ofFilm;
            }
            float[] values = looks.get(i).view().of(conditions, states);
            CellMeans.add(maps.get(i), range, values, states.grid(), patch);
        }
    }
}
