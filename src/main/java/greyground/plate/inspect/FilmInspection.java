package greyground.plate.inspect;

import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.BitPlane;
import greyground.raster.Crew;
import greyground.raster.PixelRect;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.concurrent.Future;

/**
 * Inspects a film of hard dots, row after row, each seen once: lands that will vanish, openings that will stay shut, blacks so
 * wide that the pad wipes them out.
 *
 * <p>Rows are gathered into slabs with a halo above and below (and columns beside the plate), so wide that every pixel of a
 * slab is judged as if the whole film were there: how far a pixel can decide which lands live ({@link BareCopper#reach}), and
 * beyond that the longest distance that is measured. Slabs are inspected on several threads and joined in order, so neither the
 * bands that the film comes in nor the threads nor the slabs' height can change what is found. Memory is set by slabs and the film's
 * width; of the rest of the film only {@link WideClearings} are kept.
 *
 * <p>Fed and finished by one thread, which closes it.
 */
public final class FilmInspection implements Bands.Taker<byte[]>, AutoCloseable {
    private static final int SLAB_ROWS = 512;

    private final PixelRect plate;
    private final int filmWidth;
    private final int filmHeight;
    private final int bytesPerRow;
    private final BareCopper copper;
    private final int halo;
    private final int firstColumn;
    private final int slabRows;
    private final int threads;
    private final FoundOnFilm found;
    private final Crew workers;
    private final ArrayDeque<Future<FilmSlab>> inFlight = new ArrayDeque<>();
    private final int wordsPerRow;
    /** The rows gathered for the next slab; only the feeding thread touches it until a slab owns it. */
    private BitPlane window;

    private int filled;
    private int slabRow;

    /**
     * Begins an inspection.
     *
     * @param pitch centre-to-centre distances of film pixels
     * @param filmWidth pixels across the film
     * @param filmHeight rows of the film
     * @param plate the part to inspect; what lies about it on the film is seen too
     * @param threads that inspect, at least 1
     */
    public FilmInspection(
            FilmLimits limits, FilmPitch pitch, int filmWidth, int filmHeight, PixelRect plate, int threads) {
        this(limits, pitch, filmWidth, filmHeight, plate, threads, SLAB_ROWS);
    }

    FilmInspection(
            FilmLimits limits,
            FilmPitch pitch,
            int filmWidth,
            int filmHeight,
            PixelRect plate,
            int threads,
            int slabRows) {
        if (plate.right() > filmWidth || plate.bottom() > filmHeight) {
            throw Refusal.use("the plate reaches to " + plate.right() + ", " + plate.bottom() + " on a film of "
                    + filmWidth + " x " + filmHeight + " pixels; it must lie on the film: correct its outline");
        }
        this.plate = plate;
        this.filmWidth = filmWidth;
        this.filmHeight = filmHeight;
        this.bytesPerRow = (filmWidth + 7) / 8;
        this.copper = new BareCopper(limits, pitch.micrometres());
        this.halo = copper.reach() + copper.farthestPixels() + 2;
        this.firstColumn = Math.floorDiv(plate.left() - halo, 8) * 8;
        this.wordsPerRow = (plate.right() + halo - firstColumn + BitPlane.WORD - 1) / BitPlane.WORD;
        this.slabRows = slabRows;
        this.threads = threads;
        this.found = new FoundOnFilm(limits, pitch, copper, plate, plate.left() - firstColumn);
        this.workers = new Crew("inspection", threads);
        this.window = new BitPlane(wordsPerRow, slabRows + 2 * halo);
        this.slabRow = plate.top();
    }

    /** Takes the next rows of the film; the band is free again afterwards. */
    @Override
    public void take(int firstRow, int rowCount, byte[] band) throws IOException {
        for (int i = 0; i < rowCount && slabRow < plate.bottom(); i++) {
            int y = firstRow + i;
            // Above the film there are rows as clear as beside it.
            while (windowTop() + filled < 0) {
                filled++;
            }
            if (y == windowTop() + filled) {
                window.take(filled, band, i * bytesPerRow, filmWidth, firstColumn);
                filled++;
                submitWhenFull();
            }
        }
    }

    private int windowTop() {
        return slabRow - halo;
    }

    private void submitWhenFull() throws IOException {
        if (filled < window.rows()) {
            return;
        }
        int first = slabRow;
        int rows = Math.min(slabRows, plate.bottom() - first);
        BitPlane full = window;
        int left = plate.left() - firstColumn;
        inFlight.add(workers.submit(() -> new FilmSlab(full, halo, first, rows, left, left + plate.width(), copper)));
        slabRow += rows;
        window = new BitPlane(wordsPerRow, slabRows + 2 * halo);
        System.arraycopy(full.words(), slabRows * wordsPerRow, window.words(), 0, 2 * halo * wordsPerRow);
        filled = 2 * halo;
        if (inFlight.size() >= 2 * threads) {
            found.take(workers.result(inFlight.remove()));
        }
    }

    /** Ends the film and tells what was found. */
    public FilmFindings finish() throws IOException {
        while (slabRow < plate.bottom()) {
            if (windowTop() + filled < filmHeight && filled < window.rows()) {
                throw Refusal.failure(
                        "the film breaks off in row " + Math.max(0, windowTop() + filled) + " of " + filmHeight);
            }
            filled = window.rows();
            submitWhenFull();
        }
        while (!inFlight.isEmpty()) {
            found.take(workers.result(inFlight.remove()));
        }
        return found.findings();
    }

    @Override
    public void close() {
        workers.close();
    }
}
