package greyground.fuzz;

import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.ScanChoices;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A scan of at most half a megapixel: two bytes of width, one of choices, then four pixels in a byte. Of the choices bit 0 tells the
 * corners by hand and bit 1 lays a reflection wedge, whose numbers then follow.
 */
public final class ScanFuzz {
    public static final TestPlate PLATE = TestPlate.of(Recipe.of(Recipe.Kind.STRIP, new Size(100, 30), 1, 2, 75, 180));

    private static final int MOST_PIXELS = 1 << 19;
    private static final double PAPER = 95;

    private ScanFuzz() {}

    /** Called by the fuzzer before it looks at the clock. */
    public static void fuzzerInitialize() {
        Hostile.warm("scans", ScanFuzz::fuzzerTestOneInput);
    }

    /** Called by the fuzzer, again and again in one process. */
    public static void fuzzerTestOneInput(byte[] bytes) {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        if (in.remaining() < 3) {
            return;
        }
        int width = Math.max(1, in.getShort() & 0x7FF);
        int chosen = in.get();
        List<Double> corners = new ArrayList<>();
        for (int i = 0; (chosen & 1) != 0 && i < 8 && in.remaining() >= 2; i++) {
            corners.add((double) in.getShort());
        }
        List<ScanChoices.Reference> references = new ArrayList<>();
        for (int i = 0; (chosen & 2) != 0 && i < 3 && in.remaining() >= 6; i++) {
            references.add(new ScanChoices.Reference(
                    in.getShort() & 0x7FFF, in.getShort() & 0x7FFF, 1 + (in.get() & 0xFF), (in.get() & 0xFF) / 64.0));
        }
        byte[] pixels = new byte[in.remaining()];
        in.get(pixels);
        int height = Math.min(4 * pixels.length, MOST_PIXELS) / width;
        if (height > 0 && (corners.isEmpty() || corners.size() == 8)) {
            Hostile.answered(() -> ChartReader.read(
                    ArrayPlane.of(width, height, (x, y) -> grey(pixels, y * width + x)),
                    PLATE,
                    new ScanChoices(corners, references, Optional.of(0.0), PAPER),
                    Progress.NONE));
        }
    }

    private static int grey(byte[] pixels, int at) {
        return (pixels[at >> 2] >> 2 * (at & 3) & 3) * 0x5555;
    }
}
