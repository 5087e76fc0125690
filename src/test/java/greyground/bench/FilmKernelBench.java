package greyground.bench;

import greyground.film.ArtOnPlate;
import greyground.film.FilledPlate;
import greyground.film.FilmComposer;
import greyground.film.FilmContent;
import greyground.film.SheetLayout;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Bands;
import greyground.raster.DeflatedRows;
import greyground.raster.EnlargedRows;
import greyground.raster.PackedBits;
import greyground.raster.Progress;
import greyground.raster.ResampleAxis;
import greyground.tone.ToneCurve;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.util.Locale;

/**
 * Times the making of a 300 x 400 mm film at 1440 dpi from 6000 x 8000 grey pixels: the whole, cold and warm, and each stage by
 * itself in processor time of one thread, which other work on the machine sways less. Run with the test class path: {@code java -cp ... greyground.bench.FilmKernelBench}.
 */
public final class FilmKernelBench {
    private FilmKernelBench() {}

    public static void main(String[] arguments) throws Exception {
        int threads = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2;
        ArrayPlane art = ArrayPlane.of(6000, 8000, FilmKernelBench::scene);
        ThresholdTile grain = BenchGrain.tile(1024, 180 / 17.639);
        long made = System.nanoTime();
        SheetLayout layout = FilledPlate.sheet(new Resolution(1440), new Size(300, 400), "bench");
        FilmContent.Picture picture = FilledPlate.picture(art, layout);
        FilmComposer film = FilmComposer.screened(layout, picture, curve(), grain, false);
        say("plan", made, 0);
        double megapixels = (double) film.width() * film.height() / 1e6;
        for (int round = 0; round < 4; round++) {
            long start = System.nanoTime();
            Bands.inOrder(film.height(), 246, threads, film::maker, (first, count, band) -> {}, Progress.NONE);
            say(round == 0 ? "compose, cold" : "compose", start, megapixels);
            start = System.nanoTime();
            Count count = new Count();
            DeflatedRows.write(film.height(), film.bytesPerRow(), film::maker, threads, count, Progress.NONE);
            say("compose and deflate, " + count.bytes / 1_000_000 + " MB", start, megapixels);
        }
        stages(art, picture.placing(), layout);
    }

    private static void stages(ArrayPlane art, ArtOnPlate placing, SheetLayout layout) {
        int width = placing.image().width();
        int rows = 2000;
        double megapixels = (double) width * rows / 1e6;
        ResampleAxis once = ResampleAxis.of(rows, 0, 1, art.height());
        EnlargedRows across = new EnlargedRows(art, placing.across(), once, 0);
        EnlargedRows down = new EnlargedRows(art, placing.across(), placing.down(), 0);
        int[] sums = new int[width];
        byte[] bits = new byte[width / 8 + 1];
        for (int round = 0; round < 3; round++) {
            long start = processorTime();
            for (int y = 0; y < rows; y++) {
                across.turnTo(y);
            }
            sayProcessor("  across, per megapixel of art rows", start, megapixels);
            start = processorTime();
            down.turnTo(4000);
            for (int y = 0; y < rows; y++) {
                for (int from = 0; from < width; from += 2048) {
                    down.addTo(sums, from, Math.min(width, from + 2048));
                }
            }
            sayProcessor("  down", start, megapixels);
            start = processorTime();
            for (int y = 0; y < rows; y++) {
                PackedBits.packSigns(sums, 0, width, bits, 0);
            }
            sayProcessor("  pack", start, megapixels);
        }
    }

    private static long processorTime() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private static void sayProcessor(String what, long start, double megapixels) {
        double ms = (processorTime() - start) / 1e6;
        System.out.printf(Locale.ROOT, "%-44s %8.0f ms  %.3f ms/Mpx%n", what, ms, ms / megapixels);
    }

    private static int scene(int x, int y) {
        return (int)
                (32_767 + 20_000 * Math.sin(x * 0.004) * Math.cos(y * 0.003) + 8000 * Math.sin(x * 0.11 + y * 0.07));
    }

    private static ToneCurve curve() {
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            table[grey] = (char) (0.9 * (ToneCurve.SOLID - grey));
        }
        return new ToneCurve("bench", table);
    }

    private static void say(String what, long start, double megapixels) {
        double ms = (System.nanoTime() - start) / 1e6;
        long all =
                ProcessHandle.current().info().totalCpuDuration().orElseThrow().toMillis();
        System.out.printf(Locale.ROOT, "%-44s %8.0f ms", what, ms);
        System.out.printf(Locale.ROOT, megapixels > 0 ? "  %.3f ms/Mpx" : "", ms / megapixels);
        System.out.printf(Locale.ROOT, "  (processor time since the start %d ms)%n", all);
    }

    private static final class Count extends OutputStream {
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
