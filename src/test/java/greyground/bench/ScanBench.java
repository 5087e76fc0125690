package greyground.bench;

import greyground.chart.Area;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.quantity.Size;
import greyground.raster.GreyPlane;
import greyground.raster.PlaneStore;
import greyground.raster.Progress;
import greyground.scan.ChartReader;
import greyground.scan.Projective;
import greyground.scan.ScanChoices;
import greyground.scan.ScanReading;
import greyground.tone.Lightness;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Reads a scan of 100 million pixels: a full test plate of 150 x 200 mm turned by a few degrees at 1150 ppi, drawn flat with noise, with the
 * machine's load and the peak of resident memory.
 *
 * <pre>
 * java -Xmx768m -cp ... greyground.bench.ScanBench [ROUNDS]
 * </pre>
 */
public final class ScanBench {
    private static final double PAPER = 0.78;

    private ScanBench() {}

    public static void main(String[] arguments) throws Exception {
        int rounds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3;
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.FULL, new Size(150, 200), 2, 1, 75, 180));
        try (GreyPlane scan = scan(plate, 8900, 11_240, 0.0453)) {
            for (int round = 0; round < rounds; round++) {
                long start = System.nanoTime();
                ScanReading reading = ChartReader.read(
                        scan, plate, new ScanChoices(List.of(), List.of(), Optional.of(0.0), 95), Progress.NONE);
                System.out.printf(
                        Locale.ROOT,
                        "%d x %d pixels read in %.2f s, %d fields, load %.1f, peak %s%n",
                        scan.width(),
                        scan.height(),
                        (System.nanoTime() - start) / 1e9,
                        reading.patches().size(),
                        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage(),
                        PeakMemory.words());
            }
        }
    }

    /** Turned by 3 degrees, with a place's noise; the plate in the middle. */
    private static GreyPlane scan(TestPlate plate, int width, int height, double pixelsPerMicrometre) {
        int cell = 100;
        int across = plate.recipe().widthMicrometres() / cell;
        int down = plate.recipe().heightMicrometres() / cell;
        float[] print = new float[across * down];
        Arrays.fill(print, 0.74F);
        for (LevelPatch patch : plate.patches()) {
            fill(print, across, cell, patch.area(), Lightness.toLuminance(92 - 75 * Math.sqrt(patch.coverage())));
        }
        for (CornerCode code : plate.codes()) {
            int module = code.area().width() / CornerCode.MODULES;
            for (CornerCode.Run run : code.runs()) {
                Area area = new Area(
                        code.area().left() + run.from() * module,
                        code.area().top() + run.row() * module,
                        (run.to() - run.from()) * module,
                        module);
                fill(print, across, cell, area, 0.05);
            }
        }
        double cos = Math.cos(Math.toRadians(3)) * pixelsPerMicrometre;
        double sin = Math.sin(Math.toRadians(3)) * pixelsPerMicrometre;
        double middleX = plate.recipe().widthMicrometres() / 2.0;
        double middleY = plate.recipe().heightMicrometres() / 2.0;
        Projective back = new Projective(
                cos / pixelsPerMicrometre / pixelsPerMicrometre,
                sin / pixelsPerMicrometre / pixelsPerMicrometre,
                middleX - (cos * width / 2 + sin * height / 2) / pixelsPerMicrometre / pixelsPerMicrometre,
                -sin / pixelsPerMicrometre / pixelsPerMicrometre,
                cos / pixelsPerMicrometre / pixelsPerMicrometre,
                middleY - (-sin * width / 2 + cos * height / 2) / pixelsPerMicrometre / pixelsPerMicrometre,
                0,
                0);
        try (PlaneStore store = PlaneStore.open(width, height, Long.MAX_VALUE, Path.of("."))) {
            short[] row = new short[width];
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    int px = (int) Math.floor(back.x(x, y) / cell);
                    int py = (int) Math.floor(back.y(x, y) / cell);
                    boolean inside = px >= 0 && py >= 0 && px < across && py < down;
                    double light = inside ? print[py * across + px] : PAPER;
                    row[x] = (short) (int) (60_000 * light + (x * 7919 + y * 104_729 & 511));
                }
                store.putRows(y, 1, row);
            }
            return store.finish();
        }
    }

    private static void fill(float[] print, int across, int cell, Area area, double light) {
        for (int y = area.top() / cell; y < area.bottom() / cell; y++) {
            Arrays.fill(print, y * across + area.left() / cell, y * across + area.right() / cell, (float) light);
        }
    }
}
