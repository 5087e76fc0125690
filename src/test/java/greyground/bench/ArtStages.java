package greyground.bench;

import greyground.art.Art;
import greyground.art.colour.PaperAndInk;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Times the stages of reading art in a cold process: {@code ArtStages FILE [budget MiB] [hash]}. Run it several times; report
 * ratios.
 */
public final class ArtStages {
    private ArtStages() {}

    /** Prints milliseconds of each stage. */
    public static void main(String[] arguments) throws Exception {
        long start = System.nanoTime();
        long budget = (arguments.length > 1 ? Long.parseLong(arguments[1]) : 700) << 20;
        Art art = Art.open(Path.of(arguments[0]));
        var hash = arguments.length > 2 ? art.fingerprint() : null;
        long opened = System.nanoTime();
        try (GreyPlane plane = art.decode(Progress.NONE, budget, Path.of(System.getProperty("java.io.tmpdir")))) {
            long decoded = System.nanoTime();
            String print = hash == null ? "" : hash.join().substring(0, 8);
            long hashed = System.nanoTime();
            ArtRange range = PaperAndInk.find(plane);
            long ranged = System.nanoTime();
            long up = System.currentTimeMillis()
                    - java.lang.management.ManagementFactory.getRuntimeMXBean().getStartTime();
            System.out.printf(
                    Locale.ROOT,
                    "%s%nopen %d ms, decode %d ms, hash waited %d ms %s, range %d ms (%s), since JVM start %d ms%n",
                    art,
                    (opened - start) / 1_000_000,
                    (decoded - opened) / 1_000_000,
                    (hashed - decoded) / 1_000_000,
                    print,
                    (ranged - hashed) / 1_000_000,
                    range,
                    up);
        }
    }
}
