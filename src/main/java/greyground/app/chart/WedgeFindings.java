package greyground.app.chart;

import greyground.app.recipe.FilmWords;
import greyground.chart.CheckPlate;
import greyground.chart.TestPlate;
import greyground.film.job.Job;
import greyground.film.sheet.Sheet;
import greyground.finding.Findings;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What came of making a test plate. */
final class WedgeFindings {
    private WedgeFindings() {}

    static Findings of(Job job, TestPlate plate, Optional<CheckPlate> check, ExposurePlan plan, Sheet sheet) {
        String kind = plate.recipe().kind().word();
        Findings findings = FilmWords.findings(job, sheet, 1)
                .put("kind", kind)
                .put("id", plate.id())
                .say("chart", kind + " " + plate.id() + ", " + wedgeWords(plate))
                .put("fields", plate.patches().size())
                .put("fewestRepeats", plate.fewestRepeats())
                .put("strips", plate.strips().size());
        check.ifPresent(tones -> findings.rows(
                "printsAtLightness",
                List.of(printsWords(tones.tones())),
                tones.tones().stream()
                        .map(tone -> new Findings()
                                .put("coveragePercent", tone.coveragePerMille() / 10.0)
                                .put("lightness", tone.lightness()))
                        .toList()));
        return findings.say(
                        "code",
                        plate.codes().size() + ", each "
                                + Refusal.plain(plate.codes().get(0).area().width() / 1000.0) + " mm, dark parts "
                                + plate.recipe().codePercent() + " % grain; they say " + plate.codeText(),
                        plate.codeText())
                .put("codePercent", plate.recipe().codePercent())
                .say("plan", plan.summary())
                .list("leftOut", plate.leftOut())
                .list(
                        "notes",
                        Stream.concat(WedgePlan.notes(job).stream(), plan.warnings().stream())
                                .toList());
    }

    private static String printsWords(List<CheckPlate.Tone> tones) {
        return String.format(
                Locale.ROOT,
                "L* %.1f (bare paper), then %.1f to %.1f in %d steps",
                tones.get(0).lightness(),
                tones.get(1).lightness(),
                tones.get(tones.size() - 1).lightness(),
                tones.size() - 1);
    }

    private static String wedgeWords(TestPlate plate) {
        if (!plate.strips().isEmpty()) {
            return plate.strips().size() + " strips";
        }
        long levels = plate.patches().stream()
                .map(patch -> patch.coveragePerMille())
                .distinct()
                .count();
        return plate.patches().size() + " fields of " + levels + " levels, each at least " + plate.fewestRepeats()
                + " times";
    }
}
