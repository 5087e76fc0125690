package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import greyground.art.colour.PaperAndInk;
import greyground.raster.GreyPlane;
import greyground.tone.ArtRange;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Photographs of the scikit-image sample set (Debian package python3-skimage), each CC0 or public domain by that package's own
 * notes. PHOTOGRAPHS in the environment names another folder that holds them.
 */
class RealPhotographsTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "camera.png",
                "astronaut.png",
                "chelsea.png",
                "coffee.png",
                "brick.png",
                "gravel.png",
                "grass.png",
                "rocket.jpg",
                "hubble_deep_field.jpg",
            })
    void decodesToWhatAnIndependentToolSees(String name) throws Exception {
        String place = System.getenv().getOrDefault("PHOTOGRAPHS", "/usr/lib/python3/dist-packages/skimage/data");
        Path file = Path.of(place, name);
        if (!Files.exists(file) && "true".equals(System.getenv("CI"))) {
            fail(file + " is missing; a build machine must have the photographs");
        }
        assumeTrue(Files.exists(file), file + " is not installed");
        Art art = Art.open(file);
        assertEquals(java.util.List.of(), art.remarks());
        boolean profiled = art.colour().contains("profile");
        double tolerance = name.endsWith(".jpg") ? 1200 : 50;
        try (GreyPlane plane = Picture.decode(file)) {
            double farthest = profiled ? fromLinear(file, plane) : fromStandardRgb(file, plane);
            assertTrue(farthest <= tolerance, art + ": " + farthest + " codes away");
        }
        ArtRange range = PaperAndInk.find(Picture.decode(file));
        assertTrue(range.white() - range.black() > 0.1, art + ": " + range);
    }

    private double fromStandardRgb(Path file, GreyPlane plane) throws Exception {
        OutsideTools.run(folder, "convert " + file + " -strip -depth 16 seen.ppm");
        return Picture.read(folder.resolve("seen.ppm")).farthest(plane);
    }

    /** Little CMS, by way of vips, takes the picture from its own profile to a linear grey one. */
    private double fromLinear(Path file, GreyPlane plane) throws Exception {
        Files.write(folder.resolve("linear.icc"), TestProfiles.grey(TestProfiles.gamma(1)));
        OutsideTools.run(
                folder, "vips icc_transform " + file + " seen.pgm linear.icc --embedded --intent relative --depth 16");
        Picture seen = Picture.read(folder.resolve("seen.pgm"));
        int[] found = Picture.samples(plane);
        double farthest = 0;
        for (int i = 0; i < found.length; i++) {
            farthest = Math.max(farthest, Math.abs(found[i] - seen.samples()[i]));
        }
        return farthest;
    }
}
