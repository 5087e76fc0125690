package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Told;
import greyground.film.sheet.FilmRows;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineArtIT {
    private static final Path PEN = Path.of("testimages/hatched-jug.png");
    private static final Path PAINTED = Path.of("testimages/still-life.png");

    private static Job job(String... more) {
        Map<String, String> words =
                new HashMap<>(Map.of("plate", "36x30mm", "resolution", "720dpi", "source", "line", "grain", "260um"));
        for (int i = 0; i < more.length; i += 2) {
            words.put(more[i], more[i + 1]);
        }
        return Told.as(words).apply(JobFields.usual());
    }

    private static boolean black(byte[] bits, int bytesPerRow, int x, int y) {
        return (bits[y * bytesPerRow + (x >> 3)] & 0x80 >> (x & 7)) != 0;
    }

    /** What a loupe shows is the film. */
    @ParameterizedTest
    @ValueSource(strings = {"down", "up"})
    void aPartIsBitForBitThatOfTheWhole(String inkSide) throws Exception {
        try (ArtSource art = ArtSource.open(PEN)) {
            FilmRecipe recipe = FilmRecipe.of(art, job("ink-side", inkSide), Workshop.assumed(), Progress.NONE);
            assertTrue(recipe.line().isPresent());
            ComposedFilm film = recipe.positive();
            FilmRows whole = film.rows();
            byte[] all = whole.maker().make(0, whole.height());
            PixelRect plate = film.sheet().plate();
            PixelRect part = new PixelRect(plate.left() + 401, plate.top() + 203, 90, 70);
            byte[] seen = film.within(part).maker().make(part.top(), part.height());
            int different = 0;
            int ink = 0;
            for (int y = 0; y < part.height(); y++) {
                for (int x = part.left(); x < part.right(); x++) {
                    boolean here = black(all, whole.bytesPerRow(), x, part.top() + y);
                    ink += here ? 1 : 0;
                    different += here == black(seen, whole.bytesPerRow(), x, y) ? 0 : 1;
                }
            }
            assertEquals(0, different);
            assertTrue(ink > 500 && ink < 5800, "ink " + ink);
        }
    }

    @Test
    void artWithTonesKeepsThemAndSaysSo() throws Exception {
        try (ArtSource art = ArtSource.open(PAINTED)) {
            FilmRecipe recipe = FilmRecipe.of(art, job(), Workshop.assumed(), Progress.NONE);
            assertTrue(recipe.line().isEmpty());
            List<String> said = recipe.warnings();
            assertTrue(said.stream().anyMatch(each -> each.contains("is no line art")), said.toString());
            FilmRecipe forced = FilmRecipe.of(art, job("threshold", "40%"), Workshop.assumed(), Progress.NONE);
            assertTrue(forced.line().isPresent());
            assertTrue(forced.warnings().stream().anyMatch(each -> each.contains("drops them")));
        }
    }

    /** What is found is settled, so that the film's own job makes the film again. */
    @Test
    void theSettledJobFindsTheSameThreshold() throws Exception {
        try (ArtSource art = ArtSource.open(PEN)) {
            FilmRecipe recipe = FilmRecipe.of(art, job(), Workshop.assumed(), Progress.NONE);
            FilmRecipe again = FilmRecipe.of(art, recipe.job(), Workshop.assumed(), Progress.NONE);
            assertEquals(
                    recipe.line().orElseThrow().threshold(),
                    again.line().orElseThrow().threshold());
        }
    }
}
