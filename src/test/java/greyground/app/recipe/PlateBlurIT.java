package greyground.app.recipe;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.check.FilmChecks;
import greyground.film.job.Job;
import greyground.film.job.JobFields;
import greyground.film.job.Told;
import greyground.plate.inspect.FilmFindings;
import greyground.raster.Progress;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** How much of fine detail a job's own plate takes, and a film that gives it back. */
class PlateBlurIT {
    private static Job job(String... words) {
        Map<String, String> all = new HashMap<>(Map.of("plate", "40x30mm", "resolution", "1440dpi"));
        for (int i = 0; i < words.length; i += 2) {
            all.put(words[i], words[i + 1]);
        }
        return Told.as(all).apply(JobFields.usual());
    }

    private static double blur(Workshop workshop, Job job) {
        JobPlate plate = JobPlate.of(workshop, job);
        return plate.blurMicrometres(plate.tones().response().usable());
    }

    /** Gaussians one after the other are one whose square is the sum of theirs; on an unetched plate ink does most of it, in a thin film. */
    @Test
    void inkThatSpreadsAddsItsOwnBlurBySquares() {
        Workshop workshop = Workshop.assumed();
        double spread = 16;
        double less = workshop.ink().spreadMicrometres().value();
        Job job = job("process", "unetched-film");
        double wider = blur(workshop.with("ink.spreadMicrometres", Figure.assumed(spread, "a test")), job);
        double usual = blur(workshop, job);
        assertTrue(usual > less, "ink alone blurs by " + less + " um, the plate by " + usual);
        assertEquals(Math.sqrt(spread * spread - less * less), Math.sqrt(wider * wider - usual * usual), 2);
    }

    @Test
    void anotherPieceOfGrainIsTheSamePlate() {
        assertEquals(blur(Workshop.assumed(), job()), blur(Workshop.assumed(), job("seed", "2")), 2);
    }

    @Test
    void aScreenBeneathContinuousToneBlursToo() {
        double blur = blur(Workshop.assumed(), job("process", "photogravure"));
        assertTrue(blur > Workshop.assumed().ink().spreadMicrometres().value() && blur < 40, blur + " um");
    }

    /** The plate blurs by 24 um on a grain of 180 um, for which the mask gives back some 35 %; hardly more is lost or stays shut for it. */
    @Test
    void aFilmMadeCrispForItsPlateLosesNoMoreLandsAndDots() throws Exception {
        FilmFindings[] found = new FilmFindings[2];
        for (int i = 0; i < 2; i++) {
            Job job = job("crisp", i == 0 ? "0%" : "plate");
            try (ArtSource art = ArtSource.open(Path.of("testimages/still-life.png"))) {
                FilmRecipe recipe = FilmRecipe.of(art, job, Workshop.assumed(), Progress.NONE);
                recipe.crispness().ifPresent(crisp -> {
                    assertEquals(0.35, crisp.amount(), 0.1);
                    assertTrue(!crisp.tooCoarse());
                });
                assertEquals(i == 1, recipe.crispness().isPresent());
                found[i] = FilmChecks.of(recipe.job(), Workshop.assumed(), recipe.films(), Progress.NONE)
                        .films()
                        .get(0)
                        .findings();
            }
        }
        // Measured: 0.22 % of clear film in both, 1.14 instead of 1.10 % of black.
        assertTrue(found[1].lostLandShare() <= 1.05 * found[0].lostLandShare(), found[1].lostLandShare() + " of clear");
        assertTrue(found[1].shutShare() <= 1.05 * found[0].shutShare(), found[1].shutShare() + " of black");
    }
}
