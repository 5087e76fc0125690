package greyground.plan;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonFields;
import greyground.json.JsonText;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import java.util.List;
import java.util.Optional;

/** A plan as JSON, for attaching to the film and for reading back from it. */
public final class PlanJson {
    private static final String KIND = "plan";
    private static final int VERSION = 1;

    private PlanJson() {}

    /** The plan as a tree, fields in a fixed order. */
    public static ObjectNode tree(ExposurePlan plan) {
        ObjectNode file = JsonText.file(KIND, VERSION);
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
            step.card().ifPresent(card -> node.set("card", card(card)));
        }
        return file;
    }

    private static ObjectNode card(CardNumber card) {
        ObjectNode node = JsonText.object()
                .put("act", card.act())
                .put("value", card.value())
                .put("conditions", card.conditions())
                .put("provenance", card.provenance());
        card.blanks().forEach(node.putArray("blanks")::add);
        return node;
    }

    /** The plan as text; the same plan gives the same bytes everywhere. */
    public static String text(ExposurePlan plan) {
        return JsonText.print(tree(plan));
    }

    /** Reads a plan back. Missing lists are empty, and so is the bench card of an earlier version's plan; a newer version or another kind of file is refused. */
    public static ExposurePlan read(String text) {
        JsonFields file = JsonFields.read(KIND, VERSION, text, "make the plan again from the art");
        return new ExposurePlan(
                file.list("steps").stream().map(PlanJson::step).toList(), file.word("summary"), file.word("caution"));
    }

    private static Step step(JsonFields step) {
        List<Line> lines = step.list("lines").stream()
                .map(line ->
                        new Line(line.word("label"), line.word("value"), line.word("provenance"), line.word("basis")))
                .toList();
        return new Step(
                step.word("title"),
                step.number("seconds", Double.NaN, 0, 1e7),
                lines,
                step.words("warnings"),
                step.words("advice"),
                step.words("cautions"),
                step.has("card") ? Optional.of(card(step.section("card"))) : Optional.empty());
    }

    private static CardNumber card(JsonFields card) {
        return new CardNumber(
                card.word("act"),
                card.word("value"),
                card.word("conditions"),
                card.word("provenance"),
                card.words("blanks"));
    }
}
