package greyground.app;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.tone.Compensation;
import greyground.tone.PlateResponse;
import greyground.workshop.JsonText;

/** The tone curve as a plain JSON file, for whoever wants to see or reuse it; the program itself computes it anew. */
final class CurveFile {
    private CurveFile() {}

    static ObjectNode tree(Compensation compensation, PlateResponse response) {
        ObjectNode file = JsonText.object();
        file.put("greyground", "curve");
        file.put("version", 1);
        file.put("response", response.name());
        file.set("paperLightness", JsonText.number(compensation.paperLightness()));
        file.set("lightestLightness", JsonText.number(compensation.lightestLightness()));
        file.set("darkestLightness", JsonText.number(compensation.darkestLightness()));
        file.set("leastCoverage", JsonText.number(response.usable().least()));
        file.set("turningPoint", JsonText.number(response.usable().most()));
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

    static String text(Compensation compensation, PlateResponse response) {
        return JsonText.print(tree(compensation, response));
    }

    /** Six decimals say all that a film can hold, and keep the file readable. */
    private static double round(double value) {
        return Math.rint(value * 1e6) / 1e6;
    }
}
