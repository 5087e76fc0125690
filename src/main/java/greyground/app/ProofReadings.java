package greyground.app;

import com.fasterxml.jackson.databind.JsonNode;
import greyground.quantity.Refusal;
import greyground.tone.Lightness;
import greyground.wedge.DepthFit;
import greyground.workshop.JsonText;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Tones of a proof: comma-separated values, or what {@code read --json} says of a test plate. */
final class ProofReadings {
    private static final String COVERAGE = "coverage";
    private static final List<String> LIGHTNESS = List.of("l*", "lightness");
    private static final String DENSITY = "density";

    /** A mean of many fields is told more surely than the plate can be foretold. */
    private static final double LEAST_ERROR = 0.3;

    private ProofReadings() {}

    /**
     * Reads a file.
     *
     * @param file columns coverage (of the film, in %) and L* or density (paper included), or JSON with a list of levels or tones
     */
    static List<DepthFit.Reading> of(Path file) {
        String text = KeptFiles.readings(file);
        return text.stripLeading().startsWith("{") ? json(text) : table(text);
    }

    private static List<DepthFit.Reading> table(String text) {
        ReadingTable table = ReadingTable.of("proof readings", text);
        int coverage = table.column(COVERAGE);
        int density = table.column(DENSITY);
        int lightness = LIGHTNESS.stream().mapToInt(table::column).max().orElse(-1);
        if (coverage < 0 || (density < 0) == (lightness < 0)) {
            throw Refusal.use("proof readings have the columns " + String.join(", ", table.names())
                    + "; they must be coverage and one of L* and density: correct the heading");
        }
        List<DepthFit.Reading> readings = new ArrayList<>();
        for (List<Double> row : table.rows()) {
            double tone = lightness >= 0
                    ? row.get(lightness)
                    : Lightness.ofDensity(Refusal.checkRange(
                            "proof tone's density", row.get(density), 0, 4, "D", "measure it with the paper included"));
            readings.add(new DepthFit.Reading(row.get(coverage) / 100, tone, DepthFit.READING_ERROR));
        }
        return readings;
    }

    private static List<DepthFit.Reading> json(String text) {
        JsonNode file = JsonText.parse("proof readings", text);
        boolean levels = file.path("levels").isArray();
        JsonNode list = levels ? file.path("levels") : file.path("tones");
        List<DepthFit.Reading> readings = new ArrayList<>();
        for (JsonNode each : list) {
            JsonNode coverage = levels ? each.path(COVERAGE) : each.path("coveragePercent");
            if (!coverage.isNumber() || !each.path("lightness").isNumber()) {
                throw Refusal.use("proof readings hold a tone "
                        + (each.toString().length() > 60 ? each.toString().substring(0, 60) + "..." : each.toString())
                        + "; it must have a coverage and a lightness: give what 'greyground read --json' printed");
            }
            double half = each.path("halfWidth").asDouble(each.path("half95").asDouble(0));
            readings.add(new DepthFit.Reading(
                    coverage.doubleValue() / (levels ? 1 : 100),
                    each.path("lightness").doubleValue(),
                    half > 0 ? Math.max(LEAST_ERROR, half / 1.96) : DepthFit.READING_ERROR));
        }
        if (readings.isEmpty()) {
            throw Refusal.use(
                    "proof readings hold no levels or tones: give what 'greyground read --json' printed, or coverage,L*"
                            + " as comma-separated values");
        }
        return readings;
    }
}
