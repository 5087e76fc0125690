package greyground.app.chart;

import greyground.chart.CheckPlate;
import greyground.chart.InkChart;
import greyground.chart.Recipe;
import greyground.chart.TestPlate;
import greyground.film.compose.TestPlateSheet;
import greyground.film.job.Job;
import greyground.plan.BenchOrder;
import greyground.plan.CardNumber;
import greyground.plan.Cautions;
import greyground.plan.CopperLoss;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.ExposureTimes;
import greyground.plan.PlanRequest;
import greyground.plan.StepWedge;
import greyground.plan.TestStrip;
import greyground.quantity.Durations;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The bench plan of a test plate: a positive's, with a step that tells what is on the plate and why nothing may be improved on the way. */
public final class WedgePlan {
    static final String TEST_PLATE = "The test plate";

    private static final String EXPOSURE = "Exposure";

    private WedgePlan() {}

    /** The exposures of the strips, the middle one as the workshop exposes; empty for other test plates. */
    public static Optional<TestStrip> strips(TestPlate plate, Workshop workshop) {
        return plate.strips().isEmpty()
                ? Optional.empty()
                : Optional.of(TestStrip.around(
                        ExposureTimes.of(workshop).togetherSeconds(),
                        plate.strips().size(),
                        StepWedge.DENSITY_PER_STEP));
    }

    static List<String> stripWords(TestStrip strips) {
        List<String> words = new ArrayList<>();
        for (int i = 0; i < strips.totals().size(); i++) {
            words.add((i + 1) + ": " + seconds(strips.totals().get(i)));
        }
        return words;
    }

    /** The timetable in one line, for the film's legend. */
    static String timetable(TestStrip strips) {
        StringBuilder words = new StringBuilder("expose all for ")
                .append(seconds(strips.additions().get(0)))
                .append(", cover strip 1;");
        for (int i = 1; i < strips.additions().size(); i++) {
            words.append(" then ").append(seconds(strips.additions().get(i)));
            words.append(i + 1 < strips.additions().size() ? ", cover " + (i + 1) + ";" : "");
        }
        return words.append("; one step of a wedge (x 1.41) from strip to strip")
                .toString();
    }

    static ExposurePlan of(Job job, Workshop workshop, TestPlate plate, Optional<CheckPlate> check, CopperLoss loss) {
        ExposurePlan usual = BenchOrder.plan(
                workshop, new PlanRequest(job, plate.meanCoverage(), "none: coverages as they are", "", loss));
        Optional<TestStrip> strips = strips(plate, workshop);
        List<Step> steps = new ArrayList<>();
        for (Step step : usual.steps()) {
            boolean exposed = step.title().equals(EXPOSURE) && strips.isPresent();
            steps.add(exposed ? stripwise(step, strips.get()) : step);
            if (step.title().equals(BenchOrder.FILM)) {
                steps.add(told(plate, check));
            }
        }
        String summary = strips.isPresent() ? "exposure test, " + plate.strips().size() + " strips" : usual.summary();
        return new ExposurePlan(steps, summary, usual.caution());
    }

    /**
     * The plan of one test plate of several inks.
     *
     * @param plate its number, from 0
     */
    public static ExposurePlan ofInks(Job job, Workshop workshop, InkChart chart, int plate, CopperLoss loss) {
        TestPlate own = chart.plate(plate);
        ExposurePlan usual = BenchOrder.plan(
                workshop, new PlanRequest(job, own.meanCoverage(), "none: coverages as they are", "", loss));
        List<Step> steps = new ArrayList<>();
        for (Step step : usual.steps()) {
            steps.add(step);
            if (step.title().equals(BenchOrder.FILM)) {
                steps.add(told(own, chart, plate));
            }
        }
        return new ExposurePlan(steps, usual.summary(), usual.caution());
    }

    private static Step told(TestPlate own, InkChart chart, int plate) {
        List<String> advice = new ArrayList<>(List.of(
                "Print all plates over one another on one sheet, in their order, as wet or as dry as the edition will be, in the"
                        + " edition's inks on its paper. Stop nothing out, burnish nothing.",
                "Pull three prints and keep the third. Let it dry flat for a day, then scan it in colour at 300 to 600 pixels per"
                        + " inch with every automatic correction off and 10 mm of paper round the plate.",
                "Measure some 24 of its fields, and bare paper as row 0, column 0, with a spectrophotometer (D50, 2 degrees) if you"
                        + " can: a line 'row,column,L*,a*,b*', then one for each.",
                "Film coverage of this plate's fields in percent, row by row as numbered beside the plate, from the left as the"
                        + " print reads:"));
        advice.addAll(TestPlateSheet.rows(own));
        List<Line> lines = new ArrayList<>(List.of(
                stated("chart", chart.recipe().kind().word() + " " + chart.id()),
                stated("plate", (plate + 1) + " of " + chart.tones().size()),
                stated("fields", chart.patches().size() + " in all")));
        if (plate == chart.codePlate()) {
            lines.add(stated("its codes say", own.codeText()));
        }
        return new Step(TEST_PLATE, lines, advice, List.of());
    }

    /** How a check plate's tones should print, in one line for the film's legend. */
    static String stated(CheckPlate check, String responseName) {
        List<String> tones = new ArrayList<>();
        for (CheckPlate.Tone tone : check.tones()) {
            tones.add(String.format(
                    Locale.ROOT,
                    "%s L* %.1f",
                    tone.coveragePerMille() == 0 ? "bare" : Refusal.plain(tone.coveragePerMille() / 10.0) + " %",
                    tone.lightness()));
        }
        return "film coverage should print at (" + responseName + "): " + String.join(", ", tones);
    }

    private static Step told(TestPlate plate, Optional<CheckPlate> check) {
        List<Line> lines = new ArrayList<>();
        lines.add(stated("chart", plate.recipe().kind().word() + " " + plate.id()));
        lines.add(stated("its codes say", plate.codeText()));
        if (plate.strips().isEmpty()) {
            lines.add(stated("fields", plate.patches().size() + " in all"));
            lines.add(stated("each level", plate.fewestRepeats() + " times or more"));
        }
        List<String> advice = new ArrayList<>(advice(plate.recipe().kind()));
        plate.leftOut().forEach(left -> advice.add("Left out on a plate of this size: " + left + "."));
        plate.legend().forEach(line -> advice.add("On the plate, " + line + "."));
        if (check.isPresent()) {
            advice.add(
                    "L* at which the fields should print, row by row as numbered beside the plate, from the left as the print"
                            + " reads:");
            advice.addAll(TestPlateSheet.rows(check.get()));
        } else if (plate.strips().isEmpty()) {
            advice.add(
                    "Film coverage of the wedge's fields in percent, row by row as numbered beside the plate, from the left as the"
                            + " print reads:");
            advice.addAll(TestPlateSheet.rows(plate));
        }
        return new Step(TEST_PLATE, lines, advice, List.of());
    }

    private static List<String> advice(Recipe.Kind kind) {
        if (kind == Recipe.Kind.EXPOSURE) {
            return List.of(
                    "Choose the strip whose finest dots are washed open while its lands stand, then take its time into the"
                            + " workshop. The developed resist shows most; bite and proof the plate only if two strips look"
                            + " alike.",
                    "Opaque card, held flat; its edge goes on the ticks beside the plate. Let the lamp settle before each part.");
        }
        return List.of(
                "Do everything as for an edition: same lamp, same bath, same wiping, same paper. Stop nothing out, burnish"
                        + " nothing, and note the times and the bath's temperature.",
                "Pull three proofs and keep the third. Let it dry flat for a day, then scan it in grey at 300 to 600 pixels per"
                        + " inch with every automatic correction off.");
    }

    /** The exposure step with its timetable; the lamp's cautions stay. */
    private static Step stripwise(Step usual, TestStrip strips) {
        // What the whole exposure rests on, its parts rest on too.
        String provenance = usual.lines().stream()
                .map(Line::provenance)
                .filter(words -> words.startsWith("computed"))
                .reduce("computed", (before, last) -> last);
        List<Line> lines = new ArrayList<>();
        for (int i = 0; i < strips.totals().size(); i++) {
            String then = i + 1 < strips.totals().size() ? ", cover " + (i + 1) : "";
            lines.add(new Line(
                    "part " + (i + 1),
                    seconds(strips.additions().get(i)) + then,
                    provenance,
                    "strip " + (i + 1) + " has had " + seconds(strips.totals().get(i)) + " in all"));
        }
        lines.addAll(usual.lines());
        List<String> cautions = new ArrayList<>(usual.cautions());
        cautions.addAll(Cautions.STRIPS);
        int parts = strips.totals().size();
        CardNumber card = new CardNumber(
                "Expose",
                parts + " parts",
                seconds(strips.totals().get(0)) + " to "
                        + seconds(strips.totals().get(parts - 1)),
                provenance,
                List.of("best strip"));
        return new Step(usual.title(), 0, lines, usual.warnings(), usual.advice(), cautions, Optional.of(card));
    }

    private static Line stated(String label, String value) {
        return new Line(label, value, "", "");
    }

    private static String seconds(double seconds) {
        return seconds < 100
                ? String.format(Locale.ROOT, seconds < 10 ? "%.1f s" : "%.0f s", seconds)
                : Durations.format(Math.rint(seconds));
    }

    /** Targets finer than the film's pixels, which come out one pixel wide. */
    static List<String> notes(Job job) {
        double pitch = job.resolution().pitchMicrometres();
        return pitch <= 10
                ? List.of()
                : List.of("a film pixel is " + Refusal.plain(Math.rint(pitch * 10) / 10)
                        + " µm wide: finer dots, holes and lines are drawn that wide");
    }
}
