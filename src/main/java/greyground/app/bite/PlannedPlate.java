package greyground.app.bite;

import greyground.app.files.KeptFiles;
import greyground.app.files.SafeFile;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.FilmFile;
import greyground.app.recipe.FilmRecipe;
import greyground.film.job.Job;
import greyground.output.Attachment;
import greyground.output.FilmPdf;
import greyground.output.PlanDocument;
import greyground.plan.BenchOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanRequest;
import greyground.raster.Progress;
import greyground.tone.Compensation;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A plate that a plan is asked about: one whose film is made, or one that is only meant.
 *
 * @param job of its film
 * @param workshop as the plan takes it
 * @param plan at the bench
 * @param curve that the film's tones follow; none on a test plate
 */
public record PlannedPlate(Job job, Workshop workshop, ExposurePlan plan, List<Compensation.Node> curve) {
    public PlannedPlate {
        curve = List.copyOf(curve);
    }

    public static PlannedPlate ofFilm(Path filmPdf) {
        return new PlannedPlate(
                KeptFiles.job(filmPdf),
                KeptFiles.workshop(filmPdf),
                KeptFiles.plan(filmPdf),
                KeptFiles.carried(filmPdf, Attachment.CURVE)
                        .map(FilmFile::curve)
                        .orElse(List.of()));
    }

    /** The plate of art, through the same steps as its film would go; nothing is written. */
    public static PlannedPlate ofArt(ArtSource art, Job wanted, Workshop workshop, Progress progress)
            throws IOException {
        try (art) {
            FilmRecipe recipe = FilmRecipe.of(art, wanted, workshop, progress);
            // A film that its sheet can't hold has no plan.
            recipe.films();
            return new PlannedPlate(
                    recipe.job(), workshop, recipe.plan(), recipe.compensation().nodes());
        }
    }

    PlanRequest request() {
        PlanRequest request = new PlanRequest(
                job, BenchOrder.meanCoverage(plan), BenchOrder.curveName(plan), BenchOrder.reserve(plan));
        return BenchOrder.loss(plan, workshop.usualDepthMicrometres())
                .map(request::losing)
                .orElse(request);
    }

    /** The same film planned anew in a workshop as it is now. */
    public PlannedPlate in(Workshop now) {
        // The film is drawn already, for the printer that it was made for.
        Workshop drawn = now.with("filmPrinter.scaleX", workshop.filmPrinter().scaleX())
                .with("filmPrinter.scaleY", workshop.filmPrinter().scaleY());
        return new PlannedPlate(job, now, BenchOrder.plan(drawn, request()), curve);
    }

    /** The most black that the film's curve uses, 0 to 1; empty where no curve is known. */
    OptionalDouble mostBlack() {
        return curve.stream().mapToDouble(Compensation.Node::coverage).max();
    }

    /** The plan as pages for paper. */
    public PlanDocument pages() {
        return FilmFile.bench(job, plan, FilmFile.points(curve));
    }

    /** Writes the plan as pages for paper, a PDF of its own, replaced whole or not at all. */
    public void write(Path pdf) {
        PlanDocument pages = pages();
        SafeFile.write("plan", pdf, channel -> FilmPdf.writePlan(pages, Channels.newOutputStream(channel)));
    }
}
