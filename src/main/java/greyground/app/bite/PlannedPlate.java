package greyground.app.bite;

import greyground.app.files.KeptFiles;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmRecipe;
import greyground.film.job.Job;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanRequest;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.file.Path;

/**
 * A plate that a plan is asked about: one whose film is made, or one that is only meant.
 *
 * @param job of its film
 * @param workshop as the plan takes it
 * @param plan at the bench
 */
public record PlannedPlate(Job job, Workshop workshop, ExposurePlan plan) {
    public static PlannedPlate ofFilm(Path filmPdf) {
        return new PlannedPlate(KeptFiles.job(filmPdf), KeptFiles.workshop(filmPdf), KeptFiles.plan(filmPdf));
    }

    /** The plate of art, through the same steps as its film would go; nothing is written. */
    public static PlannedPlate ofArt(ArtSource art, Job wanted, Workshop workshop, Progress progress)
            throws IOException {
        try (art) {
            FilmRecipe recipe = FilmRecipe.of(art, wanted, workshop, progress);
            // A film that its sheet can't hold has no plan.
            recipe.films();
            return new PlannedPlate(recipe.job(), workshop, recipe.plan());
        }
    }

    PlanRequest request() {
        return new PlanRequest(job, BenchOrder.meanCoverage(plan), BenchOrder.curveName(plan));
    }

    /** The same film planned anew in a workshop as it is now. */
    public PlannedPlate in(Workshop now) {
        // The film is drawn already, for the printer that it was made for.
        Workshop drawn = now.with("filmPrinter.scaleX", workshop.filmPrinter().scaleX())
                .with("filmPrinter.scaleY", workshop.filmPrinter().scaleY());
        return new PlannedPlate(job, now, BenchOrder.plan(drawn, request()));
    }
}
