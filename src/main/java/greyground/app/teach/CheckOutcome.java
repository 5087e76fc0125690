package greyground.app.teach;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.files.DiagramFile;
import greyground.app.files.KeptFiles;
import greyground.chart.CheckPlate;
import greyground.film.sheet.ChartFile;
import greyground.fit.CheckResult;
import greyground.fit.MeasuredPatch;
import greyground.json.JsonText;
import greyground.output.Attachment;
import greyground.picture.ResidualPlot;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a check plate's print says of the workshop's calibration, in words, as JSON and as a plot. */
public final class CheckOutcome {
    private final String title;
    private final CheckResult result;

    private CheckOutcome(String title, CheckResult result) {
        this.title = title;
        this.result = result;
    }

    /** The check plate that a film PDF carries; empty where its test plate is of another kind. */
    public static Optional<CheckPlate> plate(Path film) {
        return ChartFile.readCheck(KeptFiles.attached("chart", film, Attachment.CHART));
    }

    /**
     * Compares what was measured with what the film states.
     *
     * @param check the film's plate
     * @param patches its fields, L* absolute
     */
    public static CheckOutcome of(CheckPlate check, List<MeasuredPatch> patches) {
        return new CheckOutcome(
                "check plate " + check.plate().id() + ", " + patches.size() + " fields",
                CheckResult.of(check, patches));
    }

    /** Whose plate, and how many fields. */
    String title() {
        return title;
    }

    /** The numbers. */
    public CheckResult result() {
        return result;
    }

    /** Lines for a terminal. */
    public List<String> lines() {
        List<String> lines = new ArrayList<>();
        boolean before = result.rootMeanSquareBefore().isPresent();
        lines.add("coverage  should print  printed  off    95 %    spread  fields"
                + (before ? "  off uncalibrated" : ""));
        for (CheckResult.Line line : result.lines()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%6.1f %%   L* %5.1f      %5.1f  %+5.1f  %s  %5.1f  %5d%s",
                    line.coverage() * 100,
                    line.stated(),
                    line.mean(),
                    line.off(),
                    Double.isFinite(line.half95()) ? String.format(Locale.ROOT, "+-%4.1f", line.half95()) : "  -   ",
                    line.spread(),
                    line.readings(),
                    line.before().isPresent()
                            ? String.format(
                                    Locale.ROOT, "   %+5.1f", line.before().getAsDouble())
                            : ""));
        }
        lines.add(String.format(
                Locale.ROOT,
                "worst   %+.1f L* at L* %.1f; root mean square %.2f L*%s",
                result.worst().off(),
                result.worst().stated(),
                result.rootMeanSquare(),
                before
                        ? String.format(
                                Locale.ROOT,
                                ", %.2f L* without the calibration",
                                result.rootMeanSquareBefore().getAsDouble())
                        : ""));
        lines.add("verdict " + result.verdict());
        return lines;
    }

    /** Adds the outcome to a JSON object. */
    public void describe(ObjectNode tree) {
        ArrayNode tones = tree.putArray("tones");
        for (CheckResult.Line line : result.lines()) {
            ObjectNode node = tones.addObject();
            node.set("coveragePercent", number(line.coverage() * 100));
            node.set("statedLightness", number(line.stated()));
            node.set("lightness", number(line.mean()));
            node.set("off", number(line.off()));
            node.set("spread", number(line.spread()));
            node.put("fields", line.readings());
            if (Double.isFinite(line.half95())) {
                node.set("half95", number(line.half95()));
            }
            line.before().ifPresent(off -> node.set("offUncalibrated", number(off)));
        }
        tree.set("worst", number(result.worst().off()));
        tree.set("rootMeanSquare", number(result.rootMeanSquare()));
        result.rootMeanSquareBefore().ifPresent(off -> tree.set("rootMeanSquareUncalibrated", number(off)));
        tree.put("verdict", result.verdict());
    }

    private static JsonNode number(double value) {
        return JsonText.number(Math.rint(value * 1e6) / 1e6);
    }

    /**
     * Writes the plot, as its name ends: svg, png or pdf.
     *
     * @param file replaced whole or not at all
     */
    public void writePlot(Path file) throws Exception {
        DiagramFile.write("plot", file, ResidualPlot.of(title, result));
    }
}
