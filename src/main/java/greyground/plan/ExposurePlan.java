package greyground.plan;

import java.util.List;
import java.util.Optional;

/**
 * What to do at the bench, step by step, once the film is printed.
 *
 * @param steps in the order they are done; the first states the film the plan is for
 * @param summary one line for the film's own legend, for example "expose 150 s, no separate screen; bite 20 min"
 * @param caution the lead line that defers to safety data sheet, local law and licensed practice
 */
public record ExposurePlan(List<Step> steps, String summary, String caution) {
    public ExposurePlan {
        steps = List.copyOf(steps);
    }

    /** What is done, each step numbered by its place; the film's own facts are left out. */
    public List<Step> atTheBench() {
        return steps.stream()
                .filter(step -> !step.title().equals(BenchOrder.FILM))
                .toList();
    }

    /** The numbers of the bench card, in the order of the steps. */
    public List<CardNumber> card() {
        return steps.stream().flatMap(step -> step.card().stream()).toList();
    }

    /** How a number is known, beside a circle that says already that something is assumed. */
    static String known(String provenance) {
        return provenance.equals("computed from assumed") ? "computed" : provenance;
    }

    static boolean restsOnAssumption(String provenance) {
        return provenance.contains("assumed");
    }

    public List<String> warnings() {
        return steps.stream().flatMap(step -> step.warnings().stream()).toList();
    }

    /**
     * One step.
     *
     * @param title for example "Thinning"
     * @param seconds how long a clock runs at this step, 0 when nothing is timed
     * @param lines its numbers
     * @param warnings what the numbers say is wrong, may be empty
     * @param advice sentences on how to do or check it, may be empty
     * @param cautions what can hurt at this step, may be empty
     * @param card the step's number on the bench card, if it has one
     */
    public record Step(
            String title,
            double seconds,
            List<Line> lines,
            List<String> warnings,
            List<String> advice,
            List<String> cautions,
            Optional<CardNumber> card) {
        public Step {
            lines = List.copyOf(lines);
            warnings = List.copyOf(warnings);
            advice = List.copyOf(advice);
            cautions = List.copyOf(cautions);
        }

        /** A step without a clock and without warnings. */
        public Step(String title, List<Line> lines, List<String> advice, List<String> cautions) {
            this(title, 0, lines, List.of(), advice, cautions, Optional.empty());
        }
    }

    /**
     * One number.
     *
     * @param label for example "time"
     * @param value with its unit, for example "27 min"
     * @param provenance "assumed", "measured 2026-03-04", "computed", "computed from assumed", or empty for what the job states
     * @param basis where it comes from, may be empty
     */
    public record Line(String label, String value, String provenance, String basis) {
        /** A row of a table, told as it stands. */
        static Line row(String words) {
            return new Line(words, "", "", "");
        }

        /** Whether the number rests on something nobody has measured in this workshop. */
        public boolean restsOnAssumption() {
            return ExposurePlan.restsOnAssumption(provenance);
        }

        /** How it is known, beside a circle that says what it rests on. */
        public String known() {
            return ExposurePlan.known(provenance);
        }
    }
}
