package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Of a moving picture the first frame is taken, and said to be. */
class MovingPicturesTest {
    @TempDir
    Path folder;

    private static int[] samples(Path file) {
        try (GreyPlane plane = Picture.decode(file)) {
            return Picture.samples(plane);
        }
    }

    @Test
    void theFirstFrameOfAMovingWebpIsTakenAndSaidToBe() throws Exception {
        Picture.chart(61, 47, 3).write(folder.resolve("a.ppm"), 8);
        OutsideTools.run(folder, "convert a.ppm -negate b.ppm");
        OutsideTools.run(folder, "cwebp -quiet -lossless a.ppm -o a.webp");
        OutsideTools.run(folder, "cwebp -quiet -lossless b.ppm -o b.webp");
        OutsideTools.run(folder, "webpmux -frame a.webp +40 -frame b.webp +40 -o moving.webp");
        Path moving = folder.resolve("moving.webp");
        assertEquals(
                "it is a moving picture of 2 frames: the first is taken",
                Art.open(moving).remarks().get(0));
        assertArrayEquals(samples(folder.resolve("a.webp")), samples(moving));
    }

    @Test
    void theFirstFrameOfAMovingGifIsTakenAndSaidToBe() throws Exception {
        Picture.chart(61, 47, 1).write(folder.resolve("a.pgm"), 8);
        OutsideTools.run(folder, "convert a.pgm a.gif");
        OutsideTools.run(folder, "convert -delay 10 a.gif ( a.gif -negate ) moving.gif");
        Path moving = folder.resolve("moving.gif");
        assertEquals(
                "it is a moving picture of 2 frames: the first is taken",
                Art.open(moving).remarks().get(0));
        assertArrayEquals(samples(folder.resolve("a.gif")), samples(moving));
    }

    @Test
    void aFirstFrameThatCoversOnlyAPartIsRefused() throws Exception {
        Picture.chart(60, 46, 3).write(folder.resolve("a.ppm"), 8);
        OutsideTools.run(folder, "cwebp -quiet -lossless a.ppm -o a.webp");
        OutsideTools.run(folder, "webpmux -frame a.webp +40+10+10 -frame a.webp +40 -o moving.webp");
        String said = assertThrows(Refusal.class, () -> Art.open(folder.resolve("moving.webp")))
                .getMessage();
        assertTrue(said.contains("part of it"), said);
    }
}
