package greyground.app.recipe;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import greyground.tone.Compensation;
import java.util.ArrayList;
import java.util.List;

/** The tone curve as a plain JSON file, for whoever wants to see or reuse it; the program itself computes it anew. */
public final class CurveFile {
    private CurveFile() {}

    static ObjectNode tree(Compensation compensation, JobTones tones) {
        ObjectNode file = JsonText.object();
        file.put("greyground", "curve");
        file.put("version", 1);
        file.put("response", tones.name());
        file.put("known", tones.isMeasured() ? "measured" : "foretold");
        file.set("paperLightness", JsonText.number(compensation.paperLightness()));
        file.set("lightestLightness", JsonText.number(compensation.lightestLightness()));
        file.set("darkestLightness", JsonText.number(compensation.darkestLightness()));
        file.set("leastCoverage", JsonText.number(tones.response().usable().least()));
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

    static String text(Compensation compensation, JobTones tones) {
        return JsonText.print(tree(compensation, tones));
    }

    /** The nodes of a curve that a film carries; none if it has no such list. */
    public static List<Compensation.Node> nodes(String text) {
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
