package greyground.app.bite;

import com.fasterxml.jackson.databind.JsonNode;
import greyground.app.files.KeptFiles;
import greyground.app.files.TypedTable;
import greyground.fit.DepthFit;
import greyground.json.JsonText;
import greyground.quantity.Refusal;
import greyground.tone.Lightness;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Tones of a proof: comma-separated values, or what {@code read --json} says of a test plate. */
final class ProofReadings {
    private static final String COVERAGE = "coverage";
    private static final String LIGHTNESS = "L*";
    private static final String DENSITY = "density";
    private static final Map<String, String> COLUMNS = Map.of(
            COVERAGE, COVERAGE, "coverage %", COVERAGE, "l*", LIGHTNESS, "lightness", LIGHTNESS, DENSITY, DENSITY);

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
        return text.stripLeading().startsWith("{") ? json(text) : table(file);
    }

    private static List<DepthFit.Reading> table(Path file) {
        TypedTable table = TypedTable.read("proof readings", file, COLUMNS);
        table.need(COVERAGE);
        if (table.has(DENSITY) == table.has(LIGHTNESS)) {
            throw Refusal.use(
                    file.getFileName() + " must have one column of density or one of L*: mend its header line");
        }
        List<DepthFit.Reading> readings = new ArrayList<>();
        for (TypedTable.Row row : table.rows()) {
            double tone = table.has(LIGHTNESS)
                    ? table.needed(row, LIGHTNESS, 0, 100)
                    : Lightness.ofDensity(table.needed(row, DENSITY, 0, 4));
            readings.add(new DepthFit.Reading(table.needed(row, COVERAGE, 0, 100) / 100, tone, DepthFit.READING_ERROR));
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
