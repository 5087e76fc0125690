package greyground.app.recipe;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.Program;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.json.JsonText;
import greyground.output.Attachment;
import greyground.output.Attachment.Relationship;
import greyground.output.FilmDocument;
import greyground.output.PlanDocument;
import greyground.plan.ExposurePlan;
import greyground.plan.PlanJson;
import greyground.plan.PlanText;
import greyground.quantity.Refusal;
import greyground.tone.Compensation;
import greyground.workshop.Workshop;
import greyground.workshop.WorkshopFile;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** A film as a document that carries all it was made of, so that it can be planned, proved and made again. */
public final class FilmFile {
    private static final String JSON = "application/json";

    private FilmFile() {}

    /** The films of a picture, with their curve. */
    public static FilmDocument of(FilmRecipe recipe, ExposurePlan plan, List<FilmDocument.Film> films) {
        return of(
                recipe.job(),
                recipe.workshop(),
                plan,
                films,
                points(recipe.compensation().nodes()),
                new Attachment(
                        Attachment.CURVE, JSON, JsonText.print(curve(recipe)), "the tone curve", Relationship.DATA));
    }

    /** The film of a test plate, with {@code chart} as the text that says what lies where on it. */
    public static FilmDocument ofTestPlate(
            Job job, Workshop workshop, ExposurePlan plan, List<FilmDocument.Film> films, String chart) {
        return of(
                job,
                workshop,
                plan,
                films,
                List.of(),
                new Attachment(Attachment.CHART, JSON, chart, "what lies where on the test plate", Relationship.DATA));
    }

    private static FilmDocument of(
            Job job,
            Workshop workshop,
            ExposurePlan plan,
            List<FilmDocument.Film> films,
            List<PlanDocument.CurvePoint> points,
            Attachment own) {
        return new FilmDocument(
                films,
                bench(job, plan, points),
                List.of(
                        new Attachment(Attachment.JOB, JSON, JobFile.text(job), "the job", Relationship.SOURCE),
                        new Attachment(
                                Attachment.WORKSHOP,
                                JSON,
                                WorkshopFile.text(workshop),
                                "the workshop's numbers",
                                Relationship.SOURCE),
                        own,
                        new Attachment(
                                Attachment.PLAN,
                                JSON,
                                PlanJson.text(plan),
                                "the exposure and bite plan",
                                Relationship.DATA),
                        new Attachment(
                                Attachment.PLAN_TEXT,
                                "text/plain",
                                PlanText.of(plan),
                                "the exposure and bite plan, to read",
                                Relationship.ALTERNATIVE)));
    }

    /** The paper pages of a plan, without the films. */
    public static PlanDocument bench(Job job, ExposurePlan plan, List<PlanDocument.CurvePoint> points) {
        return new PlanDocument(
                job.title(),
                FilmWords.plate(job),
                job.date().isEmpty() ? LocalDate.of(2000, 1, 1) : FilmWords.date(job.date()),
                Program.words(),
                FilmWords.particulars(job, plan),
                points,
                plan);
    }

    /** The tone curve's points, to be drawn; the same from a recipe and from the film that it made. */
    public static List<PlanDocument.CurvePoint> points(List<Compensation.Node> nodes) {
        return nodes.stream()
                .map(node -> new PlanDocument.CurvePoint(round(node.artLightness()), round(node.coverage())))
                .toList();
    }

    /** The tone curve, for whoever wants to see or reuse it; the program itself computes it anew. */
    static ObjectNode curve(FilmRecipe recipe) {
        Compensation compensation = recipe.compensation();
        JobTones tones = recipe.tones();
        ObjectNode file = JsonText.file("curve", 1);
        file.put("response", tones.name());
        file.put("known", tones.isMeasured() ? "measured" : "predicted");
        file.set("paperLightness", JsonText.number(compensation.paperLightness()));
        file.set("lightestLightness", JsonText.number(compensation.lightestLightness()));
        file.set("darkestLightness", JsonText.number(compensation.darkestLightness()));
        file.set("leastCoverage", JsonText.number(tones.response().usable().least()));
        file.set("mostCoverage", JsonText.number(recipe.reserve().limit()));
        file.set("turningPoint", JsonText.number(tones.turningPoint()));
        ArrayNode nodes = file.putArray("nodes");
        for (Compensation.Node node : compensation.nodes()) {
            ObjectNode each = nodes.addObject();
            each.set("artLightness", JsonText.number(round(node.artLightness())));
            each.set("wishedLightness", JsonText.number(round(node.wishedLightness())));
            each.set("coverage", JsonText.number(round(node.coverage())));
            each.put("attained", node.attained());
        }
        return file;
    }

    /** The nodes of a curve that a film carries; none if it has no such list. */
    public static List<Compensation.Node> curve(String text) {
        List<Compensation.Node> nodes = new ArrayList<>();
        for (JsonNode each : JsonText.parse("curve", text).path("nodes")) {
            nodes.add(new Compensation.Node(
                    checked(each, "artLightness", 100),
                    checked(each, "wishedLightness", 100),
                    checked(each, "coverage", 1),
                    each.path("attained").asBoolean()));
        }
        return nodes;
    }

    private static double checked(JsonNode node, String field, double most) {
        double value = node.path(field).asDouble(Double.NaN);
        return Refusal.checkRange("curve's " + field, value, 0, most, "", "prepare the film again");
    }

    /** Six decimals say all that a film can hold, and keep the file readable. */
    private static double round(double value) {
        return Math.rint(value * 1e6) / 1e6;
    }
}
