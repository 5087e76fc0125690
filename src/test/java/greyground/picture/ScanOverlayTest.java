package greyground.picture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.chart.LevelPatch;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Size;
import greyground.raster.ArrayPlane;
import greyground.scan.Projective;
import greyground.scan.ScanReading;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ScanOverlayTest {
    private static final TestPlate PLATE = TestPlate.of(Recipe.of(Recipe.Kind.FULL, new Size(60, 80), 2, 1, 75, 180));
    private static final ArrayPlane SCAN = ArrayPlane.of(800, 1000, (x, y) -> 50_000);
    private static final Projective PLACE = new Projective(0.01, 0, 100, 0, 0.01, 100, 0, 0);

    private static ScanReading reading(int leftOut) {
        List<MeasuredPatch> patches = PLATE
                .patches()
                .subList(leftOut, PLATE.patches().size())
                .stream()
                .map(ScanOverlayTest::measured)
                .toList();
        return new ScanReading(
                PLATE,
                PLACE,
                patches,
                List.of(),
                List.of(),
                Optional.empty(),
                List.of("read at 254 pixels to the inch of print"));
    }

    private static MeasuredPatch measured(LevelPatch patch) {
        return new MeasuredPatch(
                patch.coverage(),
                70,
                (patch.area().left() + patch.area().width() / 2.0) / 1000,
                (patch.area().top() + patch.area().height() / 2.0) / 1000,
                1);
    }

    /** A large scan is made smaller, and the plate's outline stands in the accent colour where the plate lies. */
    @Test
    void theOutlineLiesWhereThePlateLies() {
        Picture picture = ScanOverlay.of(SCAN, reading(0));
        assertTrue(picture.width() <= 1600 + 60 && picture.height() <= 1600 + 200, picture.toString());
        // The plate's left edge is 9 mm into the picture, which is 98 mm = 1600 pixels tall, behind a mat of 30.
        double perMillimetre = 1600 / 98.0;
        int x = (int) Math.round(30 + 9 * perMillimetre);
        int y = (int) Math.round(30 + 49 * perMillimetre);
        boolean accent = false;
        for (int i = -2; i <= 2; i++) {
            accent |= picture.colour(x + i, y) == Palette.ACCENT;
        }
        assertTrue(accent);
    }

    /** A field that was left out looks different: crossed, without a number. */
    @Test
    void aFieldLeftOutIsCrossed() {
        Picture all = ScanOverlay.of(SCAN, reading(0));
        Picture some = ScanOverlay.of(SCAN, reading(1));
        LevelPatch patch = PLATE.patches().get(0);
        double perMillimetre = 1600 / 98.0;
        int x = (int) (30 + (9 + (patch.area().left() + patch.area().width() / 2.0) / 1000) * perMillimetre);
        int y = (int) (30 + (9 + (patch.area().top() + patch.area().height() / 2.0) / 1000) * perMillimetre);
        int differ = 0;
        for (int i = -20; i <= 20; i++) {
            for (int k = -20; k <= 20; k++) {
                differ += all.colour(x + i, y + k) == some.colour(x + i, y + k) ? 0 : 1;
            }
        }
        assertNotEquals(0, differ);
        assertEquals(all.width(), some.width());
    }
}
