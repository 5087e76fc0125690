package greyground.app.live;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmRecipe;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.SourceArt;
import greyground.film.job.ArtChoice;
import greyground.film.job.ArtChoice.TonePoint.Given;
import greyground.film.job.Job;
import greyground.raster.Progress;
import greyground.tone.Srgb;
import greyground.workshop.Workshop;
import java.awt.image.BufferedImage;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Corners that turned art leaves blank are no paper: the found range is that of the art as it was scanned. */
class LevelledRangeTest {
    private static final Workshop SHOP = Workshop.assumed();

    @TempDir
    Path folder;

    /** Grey strokes, too pale for the cubic to overshoot into white, on paper of sRGB 241, which reflects 88 %. */
    private Path drawing() throws Exception {
        BufferedImage image = new BufferedImage(900, 600, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < 600; y++) {
            for (int x = 0; x < 900; x++) {
                image.getRaster().setSample(x, y, 0, (x / 9 + y / 13) % 5 == 0 ? 170 : 241);
            }
        }
        Path file = folder.resolve("drawing.png");
        ImageIO.write(image, "png", file.toFile());
        return file;
    }

    private static Job job(SourceArt art, String... words) {
        Map<String, String> given = new HashMap<>(Map.of("plate", "45x30mm", "resolution", "300dpi", "grain", "400um"));
        for (int i = 0; i < words.length; i += 2) {
            given.put(words[i], words[i + 1]);
        }
        return new JobWords(given).job(Optional.empty(), art, SHOP, "2026-01-01");
    }

    @Test
    void levellingChangesNeitherWhiteNorBlack() throws Exception {
        double paper = Srgb.decode(241 / 255.0);
        Path file = drawing();
        SourceArt art = ArtSource.open(file).source(1);
        ArtChoice plain = null;
        for (String turn : List.of("0", "7.6", "-20", "97.6", "180")) {
            Job turned = job(art, "rotate", turn);
            try (ArtSource source = ArtSource.open(file);
                    LiveBench bench = LiveBench.open(file)) {
                FilmRecipe films = FilmRecipe.of(source, turned, SHOP, Progress.NONE);
                ArtChoice settled = films.job().art();
                plain = plain == null ? settled : plain;
                // Found is the paper's darker shoulder.
                assertEquals(paper, ((Given) settled.white()).luminance(), 0.03, turn);
                assertEquals(plain.white(), settled.white(), turn);
                assertEquals(plain.black(), settled.black(), turn);
                double seen = bench.plate(turned, SHOP, Progress.NONE).artWhite();
                assertEquals(((Given) plain.white()).luminance(), seen, turn);
            }
        }
    }

    @Test
    void blankCornersAreToldAndCoveredLeavesThemOut() throws Exception {
        Path file = drawing();
        SourceArt art = ArtSource.open(file).source(1);
        try (ArtSource source = ArtSource.open(file)) {
            FilmRecipe films = FilmRecipe.of(source, job(art, "rotate", "7.6"), SHOP, Progress.NONE);
            assertTrue(
                    films.warnings().stream().anyMatch(w -> w.contains("--crop covered")), films.warnings()::toString);
        }
        Job covered = job(art, "rotate", "7.6", "crop", "covered");
        assertTrue(covered.art().crop().width() < 0.9, covered.art().crop()::toString);
        try (ArtSource source = ArtSource.open(file)) {
            FilmRecipe films = FilmRecipe.of(source, covered, SHOP, Progress.NONE);
            assertTrue(films.warnings().stream().noneMatch(w -> w.contains("blank")), films.warnings()::toString);
            long[] greys = films.greys();
            long white = java.util.stream.LongStream.of(java.util.Arrays.copyOfRange(greys, 64_000, 65_536))
                    .sum();
            assertEquals(0, white, "no blank pixel in the fragment");
        }
    }
}
