package greyground.plan;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/** A plan as JSON, for attaching to the film and for reading back from it. */
public final class PlanJson {
    private static final String KIND = "plan";
    private static final int VERSION = 1;

    private PlanJson() {}

    /** The plan as a tree, fields in a fixed order. */
    public static ObjectNode tree(ExposurePlan plan) {
        ObjectNode file = JsonText.object();
        file.put("greyground", KIND);
        file.put("version", VERSION);
        file.put("summary", plan.summary());
        file.put("caution", plan.caution());
        ArrayNode steps = file.putArray("steps");
        for (Step step : plan.steps()) {
            ObjectNode node = steps.addObject();
            node.put("title", step.title());
            node.set("seconds", JsonText.number(step.seconds()));
            ArrayNode lines = node.putArray("lines");
            for (Line line : step.lines()) {
                lines.addObject()
                        .put("label", line.label())
                        .put("value", line.value())
                        .put("provenance", line.provenance())
                        .put("basis", line.basis());
            }
            step.warnings().forEach(node.putArray("warnings")::add);
            step.advice().forEach(node.putArray("advice")::add);
            step.cautions().forEach(node.putArray("cautions")::add);
        }
        return file;
    }

    /** The plan as text; the same plan gives the same bytes everywhere. */
    public static String text(ExposurePlan plan) {
        return JsonText.print(tree(plan));
    }

    /** Reads a plan back. Missing lists are empty; a newer version or another kind of file is refused. */
    public static ExposurePlan read(String text) {
        ObjectNode file = JsonText.read(KIND, VERSION, text);
        List<Step> steps = new ArrayList<>();
        for (JsonNode node : file.path("steps")) {
            List<Line> lines = new ArrayList<>();
            for (JsonNode line : node.path("lines")) {
                lines.add(new Line(
                        words(line, "label"), words(line, "value"), words(line, "provenance"), words(line, "basis")));
            }
            JsonNode seconds = node.path("seconds");
            if (!seconds.isNumber() || !(seconds.doubleValue() >= 0 && seconds.doubleValue() <= 1e7)) {
                throw refused("seconds", seconds, "a number from 0 to 10000000");
            }
            steps.add(new Step(
                    words(node, "title"),
                    seconds.doubleValue(),
                    lines,
                    sentences(node, "warnings"),
                    sentences(node, "advice"),
                    sentences(node, "cautions")));
        }
        return new ExposurePlan(steps, words(file, "summary"), words(file, "caution"));
    }

    private static String words(JsonNode node, String name) {
        JsonNode words = node.path(name);
        if (!words.isTextual()) {
            throw refused(name, words, "text in quotes");
        }
        return words.textValue();
    }

    private static List<String> sentences(JsonNode node, String name) {
        List<String> sentences = new ArrayList<>();
        for (JsonNode sentence : node.path(name)) {
            if (!sentence.isTextual()) {
                throw refused(name, sentence, "text in quotes");
            }
            sentences.add(sentence.textValue());
        }
        return sentences;
    }

    private static Refusal refused(String name, JsonNode node, String allowed) {
        String shown = node.isMissingNode() ? "nothing" : node.toString();
        return Refusal.use("plan " + name + " is " + (shown.length() > 100 ? shown.substring(0, 100) + "..." : shown)
                + "; it must be " + allowed + ": make the plan again from the art");
    }
}
