package greyground.art.touch;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalContrastTest {
    /** Five rows of five, radius 1, worked by numpy from the paper's formula. */
    @Test
    void theBaseIsTheGuidedFilters() {
        double[] light = {
            10, 10, 10, 50, 50, 10, 12, 10, 50, 52, 10, 10, 10, 50, 50, 10, 10, 14, 50, 50, 10, 10, 10, 50, 50
        };
        double[][] found = LocalContrast.coefficients(light, 5, 5, 1, 16);
        double[][] expected = {{2, 2, 10.740443}, {1, 1, 11.151006}, {3, 2, 13.486857}, {0, 0, 10.334694}};
        for (double[] each : expected) {
            int at = 5 * (int) each[0] + (int) each[1];
            assertEquals(each[2], found[0][at] * light[at] + found[1][at], 1e-6);
        }
    }

    /** A step from 30 to 70 with a texture of 3 L*: at most 2 L* of halo at the most that can be asked for, whatever the art's fineness. */
    @ParameterizedTest
    @ValueSource(doubles = {125, 42, 21})
    void textureGainsAndEdgesGetNoHalo(double pitch) throws Exception {
        int width = (int) (20_000 / pitch);
        double period = 1000 / pitch;
        GreyPlane art = CrispnessTest.plane(
                width, 60, (x, y) -> (x < width / 2 ? 30 : 70) + 3 * Math.sin(2 * Math.PI * x / period));
        GreyPlane bare = CrispnessTest.plane(width, 60, (x, y) -> x < width / 2 ? 30 : 70);
        int[] textured = contrast(art, pitch, 60);
        int[] plain = contrast(bare, pitch, 60);
        double most = 0;
        double halo = 0;
        for (int x = 0; x < width; x++) {
            int at = 30 * width + x;
            double far = Math.abs(x - width / 2) * pitch;
            if (far > 4500) {
                most = Math.max(most, Math.abs(CrispnessTest.lightness(textured[at]) - (x < width / 2 ? 30 : 70)));
            }
            halo = Math.max(halo, Math.abs(CrispnessTest.lightness(plain[at]) - (x < width / 2 ? 30 : 70)));
        }
        assertTrue(most > 4.5 && most < 5.5, "texture " + most);
        assertTrue(halo < 2, "halo " + halo);
    }

    private static int[] contrast(GreyPlane art, double pitch, int bandRows) throws Exception {
        LocalContrast touch = LocalContrast.of(art, 0.8, pitch, ArtRange.WHOLE, 2, Progress.NONE);
        return CrispnessTest.touched(touch, art, bandRows, 2);
    }

    @Test
    void bandsCanNotBeSeen() throws Exception {
        GreyPlane art = CrispnessTest.plane(97, 83, (x, y) -> 30 + (x * 7 + y * 13) % 50);
        assertArrayEquals(contrast(art, 20, 83), contrast(art, 20, 7));
    }
}
