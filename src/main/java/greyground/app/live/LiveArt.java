package greyground.app.live;

import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmPreparation;
import greyground.app.recipe.SourceArt;
import greyground.film.job.ArtChoice;
import greyground.raster.EnlargedRows;
import greyground.raster.GreyPlane;
import greyground.raster.HalvedPlanes;
import greyground.raster.Histogram;
import greyground.raster.PlaneStore;
import greyground.raster.Progress;
import greyground.raster.ResampleAxis;
import greyground.raster.TurnedArt;
import greyground.tone.ArtRange;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Art that stays decoded while it is worked on, turned as the job asks and made smaller for the screen. Each is kept until the
 * job asks for another. One thread uses it.
 */
final class LiveArt implements Closeable {
    private static final int BAND_ROWS = 64;

    private final ArtSource source;
    private final Thread owner = Thread.currentThread();
    private final int threads = Math.max(1, Runtime.getRuntime().availableProcessors());
    private ArtSource.@Nullable Decoded decoded;
    private int page;
    private @Nullable Turned turned;

    LiveArt(Path file) {
        this.source = ArtSource.open(file);
    }

    /** The art as it lies, and smaller; {@code own} where the plane is another than the decoded one. */
    private static final class Turned {
        final int quarterTurns;
        final double degrees;
        final HalvedPlanes planes;
        final boolean own;

        @Nullable
        ArtRange found;

        Turned(int quarterTurns, double degrees, HalvedPlanes planes, boolean own) {
            this.quarterTurns = quarterTurns;
            this.degrees = degrees;
            this.planes = planes;
            this.own = own;
        }
    }

    /** Refuses to work for any thread but the one that opened it: a window that called by mistake would stand still. */
    void own() {
        if (Thread.currentThread() != owner) {
            throw new IllegalStateException("the bench is worked by " + owner.getName() + ", not by "
                    + Thread.currentThread().getName());
        }
    }

    Path file() {
        return source.file();
    }

    SourceArt look(int wantedPage) {
        return source.source(wantedPage);
    }

    /** The page's pixels; read where they are not at hand. */
    ArtSource.Decoded decoded(ArtChoice choice, Progress progress) {
        own();
        ArtSource.Decoded present = decoded;
        if (present != null && page == choice.page()) {
            return present;
        }
        close();
        ArtSource.Decoded read = source.decode(choice, progress);
        decoded = read;
        page = choice.page();
        return read;
    }

    /** The art as the job turns it. */
    HalvedPlanes planes(ArtChoice choice, Progress progress) throws IOException {
        return turned(choice, progress).planes;
    }

    private Turned turned(ArtChoice choice, Progress progress) throws IOException {
        GreyPlane upright = decoded(choice, progress.part(0, 0.7)).plane();
        Turned present = turned;
        if (present != null
                && present.quarterTurns == choice.quarterTurns()
                && present.degrees == choice.straightenDegrees()) {
            return present;
        }
        TurnedArt turning = new TurnedArt(upright, choice.quarterTurns(), choice.straightenDegrees());
        GreyPlane plane = upright;
        if (!turning.unchanged()) {
            try (PlaneStore store = PlaneStore.open(
                    turning.width(), turning.height(), source.planeBudgetBytes() / 2, source.spillFolder())) {
                turning.rows(threads, store::putRows, progress.part(0.7, 0.9));
                plane = store.finish();
            }
        }
        Turned made;
        try {
            made = new Turned(
                    choice.quarterTurns(),
                    choice.straightenDegrees(),
                    HalvedPlanes.of(plane, threads, progress.part(0.9, 1)),
                    plane != upright);
        } catch (Exception | Error failed) {
            if (plane != upright) {
                plane.close();
            }
            throw failed;
        }
        letTurnedGo();
        turned = made;
        return made;
    }

    /** The art's ends, found as a film would find them. */
    ArtRange range(ArtChoice choice, Progress progress) throws IOException {
        Turned art = turned(choice, progress);
        boolean bothGiven = choice.white() instanceof ArtChoice.TonePoint.Given
                && choice.black() instanceof ArtChoice.TonePoint.Given;
        if (bothGiven) {
            return FilmPreparation.range(choice, art.planes.whole());
        }
        ArtRange found = art.found;
        if (found == null) {
            ArtChoice.TonePoint free = new ArtChoice.TonePoint.Automatic();
            found = FilmPreparation.range(
                    new ArtChoice(
                            choice.fileName(),
                            choice.sha256(),
                            choice.page(),
                            choice.crop(),
                            choice.quarterTurns(),
                            choice.straightenDegrees(),
                            free,
                            free),
                    art.planes.whole());
            art.found = found;
        }
        return new ArtRange(
                choice.white() instanceof ArtChoice.TonePoint.Given white ? white.luminance() : found.white(),
                choice.black() instanceof ArtChoice.TonePoint.Given black ? black.luminance() : found.black());
    }

    /** Pixels of the fragment by grey code. */
    long[] greysOfCrop(ArtChoice choice, Progress progress) throws IOException {
        GreyPlane plane = planes(choice, progress).whole();
        return Histogram.of(plane, FilmPreparation.cropped(plane, choice.crop()), threads);
    }

    /**
     * Greys of a window over the art.
     *
     * @param left art place of the window's left edge, in art pixels
     * @param top art place of its upper edge
     * @param across art pixels of one pixel of the window, across
     * @param down the same, down
     */
    static short[] greys(
            HalvedPlanes planes, double left, double top, double across, double down, int width, int height) {
        int halvings = planes.halvingsFor(Math.min(across, down));
        GreyPlane plane = planes.halved(halvings);
        double shrunk = 1 << halvings;
        ResampleAxis columns = ResampleAxis.of(width, left / shrunk, across / shrunk, plane.width());
        ResampleAxis rows = ResampleAxis.of(height, top / shrunk, down / shrunk, plane.height());
        short[] greys = new short[width * height];
        int bands = (height + BAND_ROWS - 1) / BAND_ROWS;
        IntStream.range(0, bands).parallel().forEach(band -> {
            EnlargedRows enlarged = new EnlargedRows(plane, columns, rows, 0);
            int[] sums = new int[width];
            for (int y = band * BAND_ROWS; y < Math.min(height, (band + 1) * BAND_ROWS); y++) {
                Arrays.fill(sums, 0);
                enlarged.turnTo(y);
                enlarged.addTo(sums, 0, width);
                for (int x = 0; x < width; x++) {
                    greys[y * width + x] = (short) EnlargedRows.grey(sums[x]);
                }
            }
        });
        return greys;
    }

    private void letTurnedGo() {
        Turned present = turned;
        if (present != null && present.own) {
            present.planes.whole().close();
        }
        turned = null;
    }

    @Override
    public void close() {
        letTurnedGo();
        ArtSource.Decoded present = decoded;
        if (present != null) {
            present.plane().close();
        }
        decoded = null;
    }
}
