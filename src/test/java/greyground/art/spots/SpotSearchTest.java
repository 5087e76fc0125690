package greyground.art.spots;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import greyground.raster.Progress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Specks of known places in photographs: scikit-image's sample set, or the folder that PHOTOGRAPHS names, and our own. */
class SpotSearchTest {
    private static double[][] photograph(String name) {
        Path own = Path.of("testimages", name);
        Path file = Files.exists(own)
                ? own
                : Path.of(System.getenv().getOrDefault("PHOTOGRAPHS", "/usr/lib/python3/dist-packages/skimage/data"))
                        .resolve(name);
        if (!Files.exists(file) && "true".equals(System.getenv("CI"))) {
            fail(file + " is missing; a build machine must have the photographs");
        }
        assumeTrue(Files.exists(file), file + " is not installed");
        return Specks.rows(file);
    }

    private static SpotsFound found(Specks specks, boolean with) throws Exception {
        return SpotSearch.in(specks.plane(with), 2, Progress.NONE);
    }

    /** Grass, a coat, buildings: more than half of them are healed, each time with fewer than ten falsehoods. */
    @Test
    void findsSpecksOnTheCameraMan() throws Exception {
        double[][] photograph = photograph("camera.png");
        int placed = 0;
        long hits = 0;
        for (long seed : new long[] {3, 4, 5}) {
            Specks specks = Specks.in(photograph, 40, seed, 1, 3.5);
            SpotsFound found = found(specks, true);
            placed += specks.specks().size();
            hits += specks.hits(found.dust());
            assertTrue(specks.falsehoods(found.dust()) < 10, specks.falsehoods(found.dust()) + " falsehoods");
            double before = specks.rms(specks.specked(), found.dust());
            double after = specks.rms(specks.healed(found.dust()), found.dust());
            assertTrue(after < before / 3, before + " L* to " + after);
        }
        assertEquals(120, placed);
        assertTrue(hits > placed / 2, hits + " of " + placed);
    }

    /** On photographs without specks hardly anything is taken for dust. */
    @ParameterizedTest
    @CsvSource({
        "camera.png, 0",
        "moon.png, 0",
        "brick.png, 0",
        "gravel.png, 0",
        "grass.png, 0",
        "chelsea.png, 0",
        "still-life.png, 0",
        "stars.jpg, 0",
        "raccoon.jpg, 0",
        "coffee.png, 3",
        "coins.png, 2",
    })
    void takesNothingOfThePicturesOwnForDust(String name, int most) throws Exception {
        SpotsFound found = found(Specks.in(photograph(name), 0, 1, 1, 2), false);
        assertTrue(
                found.dust().size() <= most,
                name + ": " + found.dust().size() + " of " + found.spots().size());
    }

    @ParameterizedTest
    @ValueSource(strings = {"moon.png", "still-life.png", "stars.jpg"})
    void saysWhenAPictureHasSpotsOfItsOwn(String name) throws Exception {
        assertTrue(found(Specks.in(photograph(name), 0, 1, 1, 2), false).own(), name);
    }

    @Test
    void neitherSquaresNorThreadsAreSeen() throws Exception {
        Specks specks = Specks.in(photograph("camera.png"), 36, 9, 1.5, 12.5);
        SpotsFound whole = SpotSearch.in(specks.plane(true), 1024, 1, Progress.NONE);
        assertTrue(whole.spots().size() > 10);
        for (int side : new int[] {64, 136, 512}) {
            assertEquals(whole, SpotSearch.in(specks.plane(true), side, 3, Progress.NONE), "squares of " + side);
        }
    }

    /** Specks on even paper are found where they are, as wide as they are, and a bare sheet has none. */
    @Test
    void aSpeckOnPaperIsMeasured() throws Exception {
        double[][] paper = new double[120][200];
        for (double[] row : paper) {
            Arrays.fill(row, 88);
        }
        assertEquals(List.of(), found(Specks.in(paper, 0, 1, 1, 2), false).spots());
        for (double radius : new double[] {1.5, 3, 6, 12}) {
            Specks one = Specks.in(paper, 1, 5, radius, radius);
            Specks.Speck speck = one.specks().get(0);
            List<Spot> spots = found(one, true).dust();
            assertEquals(1, spots.size(), "radius " + radius);
            Spot spot = spots.get(0);
            assertTrue(speck.under(spot));
            assertEquals(speck.contrast(), spot.contrast(), 0.2 * Math.abs(speck.contrast()), "radius " + radius);
            assertEquals(2 * radius, spot.widthPixels(), 0.35 * 2 * radius + 0.5, "radius " + radius);
        }
    }
}
