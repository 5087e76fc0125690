package greyground.app.teach;

import greyground.chart.CheckPlate;
import greyground.finding.Findings;
import greyground.fit.CheckResult;
import greyground.picture.ResidualPlot;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** A check plate's proof, read: it judges the workshop and never changes it. */
final class CheckReading {
    private CheckReading() {}

    static ReadOutcome of(CheckPlate check, PlateFindings found, ReadingTrust trust) {
        CheckResult result = CheckResult.of(check, found.patches());
        String title =
                "check plate " + check.plate().id() + ", " + found.patches().size() + " fields";
        Findings findings = new Findings()
                .say("how", found.how())
                .put("kind", "check")
                .rows("tones", result.lines().stream().map(CheckReading::tone).toList())
                .say("worst", worst(result), result.worst().off())
                .put("rootMeanSquare", result.rootMeanSquare())
                .put("rootMeanSquareUncalibrated", result.rootMeanSquareBefore())
                .put("tolerance", CheckResult.TOLERANCE)
                .say("verdict", result.verdict())
                .say(
                        "scanner",
                        trust.words(check.lightness(0), Optional.empty()),
                        trust.findings(check.lightness(0), Optional.empty()))
                .list("notes", found.notes());
        return new ReadOutcome(
                title, findings, Optional.of(ResidualPlot.of(title, result)), found.overlay(), Optional.empty());
    }

    private static Findings tone(CheckResult.Line line) {
        return new Findings()
                .put("coveragePercent", line.coverage() * 100)
                .put("statedLightness", line.stated())
                .put("lightness", line.mean())
                .put("off", line.off())
                .put(
                        "half95",
                        Double.isFinite(line.half95()) ? OptionalDouble.of(line.half95()) : OptionalDouble.empty())
                .put("spread", line.spread())
                .put("fields", line.readings())
                .put("offUncalibrated", line.before());
    }

    private static String worst(CheckResult result) {
        String words = String.format(
                Locale.ROOT,
                "%+.1f L* off at L* %.1f; root mean square %.2f L*",
                result.worst().off(),
                result.worst().stated(),
                result.rootMeanSquare());
        return result.rootMeanSquareBefore().isPresent()
                ? words
                        + String.format(
                                Locale.ROOT,
                                ", %.2f L* without the calibration",
                                result.rootMeanSquareBefore().getAsDouble())
                : words;
    }
}
