package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import greyground.raster.GreyPlane;
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
                "page.png"
            })
    void decodesToWhatAnIndependentToolSees(String name) throws Exception {
        String place = System.getenv().getOrDefault("PHOTOGRAPHS", "/usr/lib/python3/dist-packages/skimage/data");
        Path file = Path.of(place, name);
        if (!Files.exists(file) && "true".equals(System.getenv("CI"))) {
            fail(file + " is missing; a build machine must have the photographs");
        }
        assumeTrue(Files.exists(file), file + " is not installed");
        OutsideTools.run(folder, "convert " + file + " -depth 16 seen.ppm");
        Picture seen = Picture.read(folder.resolve("seen.ppm"));
        Art art = Art.open(file);
        assertEquals(java.util.List.of(), art.remarks());
        try (GreyPlane plane = Picture.decode(file)) {
            double tolerance = name.endsWith(".jpg") ? 1200 : 1;
            double farthest = seen.farthest(plane);
            assertTrue(farthest <= tolerance, art + ": " + farthest + " codes away");
        }
        ArtRange range = ArtRange.find(Picture.decode(file));
        assertTrue(range.white() - range.black() > 0.1, art + ": " + range);
    }
}
