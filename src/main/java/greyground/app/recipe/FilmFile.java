package greyground.app.recipe;

import greyground.app.files.Program;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.output.Attachment;
import greyground.output.Attachment.Relationship;
import greyground.output.FilmDocument;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanJson;
import greyground.plan.PlanText;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;

/** A film as a document that carries all it was made of, so that it can be planned, proved and made again. */
public final class FilmFile {
    private static final String JSON = "application/json";

    private FilmFile() {}

    /** The films of a picture, with their curve. */
    static FilmDocument of(FilmRecipe recipe, ExposurePlan plan, List<FilmDocument.Film> films) {
        List<FilmDocument.CurvePoint> points = recipe.compensation().nodes().stream()
                .map(node -> new FilmDocument.CurvePoint(node.artLightness(), node.coverage()))
                .toList();
        return of(
                recipe.job(),
                recipe.workshop(),
                plan,
                films,
                points,
                attachment(
                        Attachment.CURVE,
                        JSON,
                        CurveFile.text(recipe.compensation(), recipe.tones()),
                        "the tone curve",
                        Relationship.DATA));
    }

    /** The film of a test plate, with {@code chart} as the text that says what lies where on it. */
    public static FilmDocument ofTestPlate(
            Job job, Workshop workshop, ExposurePlan plan, FilmDocument.Film film, String chart) {
        return of(
                job,
                workshop,
                plan,
                List.of(film),
                List.of(),
                attachment(Attachment.CHART, JSON, chart, "what lies where on the test plate", Relationship.DATA));
    }

    private static FilmDocument of(
            Job job,
            Workshop workshop,
            ExposurePlan plan,
            List<FilmDocument.Film> films,
            List<FilmDocument.CurvePoint> points,
            Attachment own) {
        return new FilmDocument(
                job.title(),
                job.date().isEmpty() ? LocalDate.of(2000, 1, 1) : FilmWords.date(job.date()),
                Program.words(),
                films,
                FilmWords.particulars(job, plan),
                points,
                plan,
                List.of(
                        attachment(Attachment.JOB, JSON, JobFile.text(job), "the job", Relationship.SOURCE),
                        attachment(
                                Attachment.WORKSHOP,
                                JSON,
                                WorkshopFile.text(workshop),
                                "the workshop's numbers",
                                Relationship.SOURCE),
                        own,
                        attachment(
                                Attachment.PLAN,
                                JSON,
                                PlanJson.text(plan),
                                "the exposure and bite plan",
                                Relationship.DATA),
                        attachment(
                                Attachment.PLAN_TEXT,
                                "text/plain",
                                PlanText.of(plan),
                                "the exposure and bite plan, to read",
                                Relationship.ALTERNATIVE)));
    }

    private static Attachment attachment(
            String name, String mediaType, String text, String description, Relationship relationship) {
        return new Attachment(name, mediaType, text.getBytes(StandardCharsets.UTF_8), description, relationship);
    }
}
