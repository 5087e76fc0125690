package greyground.bench;

import greyground.film.compose.FilmComposer;
import greyground.film.compose.FilmContent;
import greyground.film.sheet.FilledPlate;
import greyground.film.sheet.SheetLayout;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Bands;
import greyground.raster.DeflatedRows;
import greyground.raster.EnlargedRows;
import greyground.raster.PackedRows;
import greyground.raster.Progress;
import greyground.raster.ResampleAxis;
import greyground.tone.ToneCurve;
import java.io.OutputStream;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * Nanoseconds to the pixel of each loop that a film runs through, on one thread, by JMH. Run all kernels with {@code java -cp
 * TEST-CLASS-PATH org.openjdk.jmh.Main Kernels}; docs/architecture.md holds them against what the processor could do at best.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class FilmKernels {
    private static final int WIDTH = 17_008;
    private static final int ROWS = 64;
    /** Pixels across the whole sheet round a plate of 300 mm. */
    private static final int SHEET = 19_729;

    private static final int DPI = 1440;

    private EnlargedRows across;
    private EnlargedRows down;
    private int[] sums;
    private byte[] bits;
    private Bands.Maker<byte[]> maker;
    private FilmComposer film;
    private byte[] band;
    private int turn;
    private int top;

    /** Art of 6000 pixels across, enlarged 2.83 times as for 300 mm at 1440 dpi, and a film of it with grain of 180 um. */
    @Setup
    public void prepare() throws Exception {
        ArrayPlane art = ArrayPlane.of(
                6000, 1000, (x, y) -> (int) (32_767 + 20_000 * Math.sin(x * 0.004) * Math.cos(y * 0.003)));
        ResampleAxis wide = ResampleAxis.of(WIDTH, 0, 6000.0 / WIDTH, 6000);
        // As many rows down as the art has, so that each needs one more art row, enlarged across.
        across = new EnlargedRows(art, wide, ResampleAxis.of(1000, 0, 1, 1000), 0);
        down = new EnlargedRows(art, wide, ResampleAxis.of(2830, 0, 1000.0 / 2830, 1000), 0);
        sums = new int[WIDTH];
        bits = new byte[WIDTH / 8 + 1];
        SheetLayout layout = FilledPlate.sheet(new Resolution(DPI), new Size(300, 50), "bench");
        FilmContent.Picture picture = FilledPlate.picture(art, layout);
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            table[grey] = (char) (0.9 * (ToneCurve.SOLID - grey));
        }
        film = FilmComposer.screened(
                layout, picture, new ToneCurve("bench", table), BenchGrain.tile(1024, 180 / (25_400.0 / DPI)), false);
        if (film.width() != SHEET) {
            throw new IllegalStateException("the sheet is " + film.width() + " pixels wide: set SHEET to that");
        }
        maker = film.maker();
        top = picture.image().top();
        band = maker.make(picture.image().top() + 100, 200);
        down.turnTo(1000);
        down.addTo(sums, 0, WIDTH);
    }

    /** An art row enlarged across, six weights a pixel, to the pixel of that row. */
    @Benchmark
    @OperationsPerInvocation(WIDTH)
    public void enlargeAcross() {
        across.turnTo(turn++ % 1000);
    }

    /** A film row as the weighted sum of six enlarged rows. */
    @Benchmark
    @OperationsPerInvocation(WIDTH)
    public int addDown() {
        for (int from = 0; from < WIDTH; from += 2048) {
            down.addTo(sums, from, Math.min(WIDTH, from + 2048));
        }
        return sums[turn++ % WIDTH];
    }

    /** A row of signs packed to bits. */
    @Benchmark
    @OperationsPerInvocation(WIDTH)
    public byte[] pack() {
        PackedRows.packSigns(sums, 0, WIDTH, bits, 0);
        return bits;
    }

    /** Whole rows of the film: all of the above, limits looked up and marks drawn. */
    @Benchmark
    @OperationsPerInvocation(SHEET * ROWS)
    public byte[] compose() throws Exception {
        return maker.make(top + turn++ % 20 * ROWS, ROWS);
    }

    /** Grain deflated, with its checksum and a copy, to the film pixel. */
    @Benchmark
    @OperationsPerInvocation(SHEET * 200)
    public long deflate() throws Exception {
        int row = film.bytesPerRow();
        Sink sink = new Sink();
        DeflatedRows.write(200, row, () -> (first, count) -> band.clone(), 1, sink, Progress.NONE);
        return sink.bytes;
    }

    private static final class Sink extends OutputStream {
        private long bytes;

        @Override
        public void write(int value) {
            bytes++;
        }

        @Override
        public void write(byte[] from, int at, int length) {
            bytes += length;
        }
    }
}
