package greyground.fuzz;

import greyground.art.Art;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.nio.file.Path;

/** A picture file of any kind: opened, its last page too, and decoded. */
public final class ArtFuzz {
    private static final long BUDGET_BYTES = 64L << 20;

    private ArtFuzz() {}

    /** Called by the fuzzer before it looks at the clock. */
    public static void fuzzerInitialize() {
        Hostile.warm("art", ArtFuzz::fuzzerTestOneInput);
    }

    /** Called by the fuzzer, again and again in one process. */
    public static void fuzzerTestOneInput(byte[] bytes) {
        Path file = Hostile.file("art", bytes);
        Hostile.answered(() -> {
            Art first = Art.open(file);
            decode(first);
            if (first.pages() > 1) {
                decode(Art.open(file, first.pages()));
            }
        });
    }

    private static void decode(Art art) {
        try (GreyPlane plane = art.decode(Progress.NONE, BUDGET_BYTES, Hostile.scratch())) {
            plane.readRow(plane.height() - 1, new short[plane.width()]);
            String said = art + art.colour() + art.remarks() + art.pixelsPerInch();
            if (said.contains("\n")) {
                throw new AssertionError("more than one line: " + said);
            }
        }
    }
}
