package greyground.scan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A scanner in which stray light of 2 % is spread as the equation says, R' = (1 - f) R + f Rbar, over 10 mm. */
class StrayLightTest {
    private static final double SHARE = 0.02;

    private static GreyPlane strayed(GreyPlane scan, double pixelsPerInch) {
        int width = scan.width();
        int height = scan.height();
        short[] row = new short[width];
        double[][] sums = new double[height + 1][width + 1];
        for (int y = 0; y < height; y++) {
            scan.readRow(y, row);
            double line = 0;
            for (int x = 0; x < width; x++) {
                line += row[x] & 0xFFFF;
                sums[y + 1][x + 1] = sums[y][x + 1] + line;
            }
        }
        int reach = (int) Math.round(5 * pixelsPerInch / 25.4);
        return ArrayPlane.of(width, height, (x, y) -> {
            int left = Math.max(0, x - reach);
            int right = Math.min(width, x + reach + 1);
            int top = Math.max(0, y - reach);
            int bottom = Math.min(height, y + reach + 1);
            double mean = (sums[bottom][right] - sums[top][right] - sums[bottom][left] + sums[top][left])
                    / ((double) (right - left) * (bottom - top));
            double own = sums[y + 1][x + 1] - sums[y][x + 1] - sums[y + 1][x] + sums[y][x];
            return (int) Math.round((1 - SHARE) * own + SHARE * mean);
        });
    }

    private static double worst(GreyPlane scan, TestPlate plate, double share) {
        ScanReading reading = ChartReader.read(
                scan, plate, new ScanChoices(List.of(), List.of(), Optional.of(share), 95), Progress.NONE);
        double worst = 0;
        for (MeasuredPatch patch : reading.patches()) {
            worst = Math.max(worst, Math.abs(patch.lightness() - PaintedScan.usualTone(patch.coverage())));
        }
        return worst;
    }

    @Test
    void strayLightThatIsKnownIsTakenOut() {
        TestPlate plate = TestPlate.of(Recipe.of(Recipe.Kind.STRIP, new Size(100, 30), 1, 2, 75, 180));
        GreyPlane scan = strayed(
                PaintedScan.of(plate, PaintedScan::usualTone)
                        .at(200)
                        .noisy(0.0005)
                        .plane(),
                200);
        assertTrue(worst(scan, plate, 0) > 2, "stray light lifts blacks");
        assertEquals(0, worst(scan, plate, SHARE), 0.4);
    }
}
