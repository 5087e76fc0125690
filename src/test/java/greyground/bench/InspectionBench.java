package greyground.bench;

import greyground.film.compose.FilmComposer;
import greyground.film.compose.FilmContent;
import greyground.film.sheet.FilledPlate;
import greyground.film.sheet.SheetLayout;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plan.BenchConditions;
import greyground.plate.PlateProcess;
import greyground.plate.inspect.FilmFindings;
import greyground.plate.inspect.FilmInspection;
import greyground.plate.inspect.FilmLimits;
import greyground.plate.inspect.FilmPitch;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import greyground.workshop.Workshop;
import java.lang.management.ManagementFactory;
import java.util.Locale;

/**
 * Times the inspection of a 300 x 400 mm film at 1440 dpi, 386 million pixels on the plate, with a real grain of 180 um and the
 * assumed workshop: composing alone, then composing and inspecting, with the machine's load and the peak of resident memory.
 *
 * <pre>
 * java -Xmx768m -cp ... greyground.bench.InspectionBench [THREADS [MOST_COVERAGE]]
 * </pre>
 *
 * <p>A most coverage of 1 leaves wide blacks solid: the slowest film there is.
 */
public final class InspectionBench {
    private InspectionBench() {}

    public static void main(String[] arguments) throws Exception {
        int threads = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 2;
        double most = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 0.87;
        Resolution resolution = new Resolution(1440);
        ThresholdTile grain = ThresholdTile.of(new Grain.Stochastic(180, 1), resolution);
        ArrayPlane art = ArrayPlane.of(3000, 4000, InspectionBench::scene);
        SheetLayout layout = FilledPlate.sheet(resolution, new Size(300, 400), "bench");
        FilmContent.Picture picture = FilledPlate.picture(art, layout);
        FilmComposer film = FilmComposer.screened(layout, picture, curve(most), grain, false);
        FilmLimits limits = FilmLimits.of(BenchConditions.ofDepth(
                Workshop.assumed(),
                new PlateProcess.EtchedFilm(),
                Workshop.assumed().usualDepthMicrometres(),
                true));
        System.out.println(limits);
        PixelRect plate = layout.plate();
        for (int round = 0; round < 2; round++) {
            Clock clock = new Clock();
            Bands.inOrder(film.height(), 246, threads, film::maker, (first, count, band) -> {}, Progress.NONE);
            clock.say("compose");
            clock = new Clock();
            try (FilmInspection inspection = new FilmInspection(
                    limits,
                    new FilmPitch(resolution.pitchMicrometres(), resolution.pitchMicrometres()),
                    film.width(),
                    film.height(),
                    new PixelRect(plate.left(), plate.top(), plate.width(), plate.height()),
                    threads)) {
                Bands.inOrder(film.height(), 246, threads, film::maker, inspection, Progress.NONE);
                FilmFindings found = inspection.finish();
                clock.say("compose and inspect");
                System.out.printf(
                        Locale.ROOT,
                        "  %d sites, %d lands of %.1f mm2 lost, %d openings of %.1f mm2 shut%n",
                        found.openBiteCount(),
                        found.lostLandCount(),
                        found.lostLandSquareMillimetres(),
                        found.shutOpeningCount(),
                        found.shutSquareMillimetres());
            }
        }
        System.out.println("peak resident " + PeakMemory.words());
    }

    private static int scene(int x, int y) {
        return (int)
                (32_767 + 24_000 * Math.sin(x * 0.008) * Math.cos(y * 0.006) + 8000 * Math.sin(x * 0.11 + y * 0.07));
    }

    private static ToneCurve curve(double most) {
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            table[grey] = (char) (most * Math.min(ToneCurve.SOLID, 1.3 * (ToneCurve.SOLID - grey)));
        }
        return new ToneCurve("bench", table);
    }

    /** Wall and processor time from its making on. */
    private static final class Clock {
        private final long start = System.nanoTime();
        private final long busy = processorMillis();

        void say(String what) {
            System.out.printf(
                    Locale.ROOT,
                    "%-22s %.1f s, processor %.1f s, load %.1f%n",
                    what,
                    (System.nanoTime() - start) / 1e9,
                    (processorMillis() - busy) / 1e3,
                    ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
        }

        private static long processorMillis() {
            return ProcessHandle.current()
                    .info()
                    .totalCpuDuration()
                    .orElseThrow()
                    .toMillis();
        }
    }
}
