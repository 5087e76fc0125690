package greyground.film;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.grain.Grain;
import greyground.plate.FilmFindings;
import greyground.raster.ArrayPlane;
import greyground.raster.Progress;
import java.util.Random;
import org.junit.jupiter.api.Test;

class MendLawIT {
    /**
     * Art of every kind, with curves up to nearly solid black, whose grain alone hardly holds: mending adds no site, however
     * close the film is to open bite already.
     */
    @Test
    void mendingNeverMakesAnOpenBite() throws Exception {
        Random random = new Random(31);
        double solid = 0;
        for (int round = 0; round < 8; round++) {
            double[] blobs = random.doubles(120).toArray();
            double dark = 0.5 + 0.5 * random.nextDouble();
            ArrayPlane art = ArrayPlane.of(400, 300, (x, y) -> {
                double nearest = 1e9;
                for (int i = 0; i < blobs.length; i += 3) {
                    double away = Math.hypot(x - 400 * blobs[i], y - 300 * blobs[i + 1]);
                    nearest = Math.min(nearest, away - 25 * blobs[i + 2]);
                }
                // Black blobs on a ground that is itself dark.
                return nearest < 0 ? 0 : (int) (65_535 * Math.max(0, 1 - dark - 0.004 * nearest));
            });
            Grain grain = round % 2 == 0 ? MendTest.GRAIN : MendTest.DOTS_OF_HALFTONE;
            MendTest.Made made = MendTest.made(art, grain, 0.86 + 0.015 * round, false);
            FilmFindings before = MendTest.inspected(made, made.film());
            FilmFindings after = MendTest.inspected(made, made.mend().rows());
            assertTrue(
                    after.openBiteSquareMillimetres() <= before.openBiteSquareMillimetres() + 1e-9,
                    "round " + round + ": " + before.openBiteSquareMillimetres() + " mm2 before, "
                            + after.openBiteSquareMillimetres() + " after");
            solid += MendReport.of(made.mend(), 2, Progress.NONE).solidSquareMillimetres();
        }
        assertTrue(solid > 40, "made solid in all: " + solid + " mm2");
    }
}
