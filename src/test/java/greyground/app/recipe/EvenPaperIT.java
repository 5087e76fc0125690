package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.JobFields;
import greyground.film.job.Told;
import greyground.film.sheet.FilmRows;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EvenPaperIT {
    private static final Path PEN = Path.of("testimages/hatched-jug.png");

    @TempDir
    Path folder;

    private record Made(byte[] bits, List<String> warnings) {}

    private static Made film(Path file, String... more) throws Exception {
        Map<String, String> words = new HashMap<>(
                Map.of("plate", "60x43mm", "resolution", "720dpi", "source", "line", "edge-growth", "8um"));
        for (int i = 0; i < more.length; i += 2) {
            words.put(more[i], more[i + 1]);
        }
        try (ArtSource art = ArtSource.open(file)) {
            FilmRecipe recipe =
                    FilmRecipe.of(art, Told.as(words).apply(JobFields.usual()), Workshop.assumed(), Progress.NONE);
            FilmRows rows = recipe.positive().rows();
            return new Made(rows.maker().make(0, rows.height()), recipe.warnings());
        }
    }

    /** The same drawing under a lamp on its left, a sixth as light at the right; sRGB's curve taken as its power of 2.4. */
    private Path underALamp() throws Exception {
        BufferedImage even = ImageIO.read(PEN.toFile());
        BufferedImage lit = new BufferedImage(even.getWidth(), even.getHeight(), BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < lit.getHeight(); y++) {
            for (int x = 0; x < lit.getWidth(); x++) {
                double light = Math.pow(1.0 / 6, (double) x / lit.getWidth());
                int grey = even.getRaster().getSample(x, y, 0);
                lit.getRaster().setSample(x, y, 0, (int) Math.round(grey * Math.pow(light, 1 / 2.4)));
            }
        }
        Path file = folder.resolve("lit.png");
        ImageIO.write(lit, "png", file.toFile());
        return file;
    }

    private static long different(byte[] one, byte[] other) {
        long bits = 0;
        for (int i = 0; i < one.length; i++) {
            bits += Integer.bitCount((one[i] ^ other[i]) & 0xFF);
        }
        return bits;
    }

    @Test
    void aDrawingInUnevenLightIsTheDrawing() throws Exception {
        Made drawn = film(PEN);
        Path lit = underALamp();
        long ink = different(drawn.bits(), new byte[drawn.bits().length]);
        Made left = film(lit, "even-paper", "0%");
        Made even = film(lit, "even-paper", "3%");
        assertTrue(
                different(drawn.bits(), left.bits()) > ink / 5,
                "left alone the dark side becomes ink: " + different(drawn.bits(), left.bits()) + " of " + ink);
        assertTrue(
                different(drawn.bits(), even.bits()) < ink / 40, different(drawn.bits(), even.bits()) + " of " + ink);
        assertTrue(
                even.warnings().stream().anyMatch(warning -> warning.startsWith("the paper was made even: the light")),
                even.warnings().toString());
        assertArrayEquals(left.bits(), film(lit).bits(), "none is none");
    }
}
