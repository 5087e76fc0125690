package greyground.plan;

import java.util.List;

/**
 * What to do at the bench, step by step, once the film is printed.
 *
 * @param steps in the order they are done
 * @param summary one line for the film's own legend, for example "expose 150 s, no separate screen; bite 20 min"
 * @param caution the lead line that defers to safety data sheet, local law and licensed practice
 */
public record ExposurePlan(List<Step> steps, String summary, String caution) {
    public ExposurePlan {
        steps = List.copyOf(steps);
    }

    /**
     * One step.
     *
     * @param title for example "Thinning"
     * @param lines its numbers
     * @param advice sentences on how to do or check it, may be empty
     * @param cautions what can hurt at this step, may be empty
     */
    public record Step(String title, List<Line> lines, List<String> advice, List<String> cautions) {
        public Step {
            lines = List.copyOf(lines);
            advice = List.copyOf(advice);
            cautions = List.copyOf(cautions);
        }
    }

    /**
     * One number.
     *
     * @param label for example "time"
     * @param value with its unit, for example "27 min"
     * @param provenance "assumed", "measured 2026-03-04" or "computed"
     * @param basis where it comes from, may be empty
     */
    public record Line(String label, String value, String provenance, String basis) {}
}
