package greyground.app.plates;

import greyground.film.job.Job;
import greyground.ink.InkSet;
import greyground.ink.PrintingInk;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What to do at the press with plates that are printed over one another, and what damp paper does between them (common practice, no source). */
final class PressOrder {
    private static final String PRACTICE = "common practice, no source";

    private PressOrder() {}

    /** @param caution that leads the plan of each plate */
    static ExposurePlan plan(InkSet inks, Job job, String caution) {
        List<Step> steps = new ArrayList<>();
        int count = inks.inks().size();
        steps.add(new Step(
                "Plates and paper",
                List.of(
                        new Line("plates", count + " of " + job.plate(), "", ""),
                        new Line("cut alike to", "0.1 mm", "assumed", PRACTICE)),
                List.of(
                        "Bevel all plates alike: the platemark of the first is what the next is laid into.",
                        "Bite and wipe each plate by its own pages; prove each alone in its own ink first.",
                        "Damp all sheets alike, as long and as wet; keep them stacked under a weight."),
                List.of()));
        for (int i = 0; i < count; i++) {
            steps.add(step(i, inks, job));
        }
        steps.add(new Step(
                "Register",
                List.of(new Line("by the platemark", "0.2 to 0.5 mm", "assumed", PRACTICE)),
                List.of(
                        "On a light table the crosses of all films lie on one another; they stand at the same places.",
                        "Keep one end of the sheet caught under the roller while plates are changed, or lay the plate into the"
                                + " corners of the mark before.",
                        "A shift is set right at the bed; a difference of size needs another film."),
                List.of()));
        return new ExposurePlan(steps, "", caution);
    }

    private static Step step(int index, InkSet inks, Job job) {
        PrintingInk ink = inks.inks().get(index);
        int count = inks.inks().size();
        List<Line> lines = new ArrayList<>();
        lines.add(new Line("ink", ink.name(), "", ""));
        if (ink.strength() != 1) {
            lines.add(new Line("strength", String.format(Locale.ROOT, "%.0f %%", 100 * ink.strength()), "", ""));
        }
        lines.add(new Line("hides", ink.opacity().word(), "", ""));
        List<String> advice = new ArrayList<>();
        if (index > 0) {
            lines.add(new Line(
                    "for 1 % of shrinking",
                    String.format(
                            Locale.ROOT,
                            "%.1f x %.1f mm",
                            job.plate().widthMillimetres() / 100,
                            job.plate().heightMillimetres() / 100),
                    "computed from assumed",
                    "cotton paper that dries moves 0.2 to 2 %; from memory, unverified"));
            advice.add(
                    "Print it at once, while the sheet is damp and as large as it was: wet ink takes somewhat less ink.");
            advice.add(
                    "A sheet that dries between has shrunk; damped again it comes back nearly, not wholly: damp it as before"
                            + " and measure the platemark.");
        } else if (count > 1) {
            advice.add("Wipe it clean: its plate tone veils the whole print, and so will that of each further plate.");
        }
        return new Step(
                "Plate " + (index + 1) + ", " + ink.name(), 0, lines, List.of(), advice, List.of(), Optional.empty());
    }
}
