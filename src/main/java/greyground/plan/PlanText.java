package greyground.plan;

import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A plan as plain text of at most 80 columns, to be read at arm's length: a box to tick at each step, its clock at the right edge,
 * what can hurt before all else, numbers in columns, an open circle at what nobody has measured, and where the numbers come from at the end.
 */
public final class PlanText {
    private static final Pattern BLANKS = Pattern.compile("\\s+");
    private static final int WIDTH = 80;
    private static final int LABEL = 6;
    private static final int VALUE = 38;
    private static final int PROVENANCE = 54;

    private final StringBuilder text = new StringBuilder();
    private final SourceNotes notes = new SourceNotes();

    private PlanText() {}

    /** The plan with the signs of the trade, such as µm and °Bé. Lines end in a line feed. */
    public static String of(ExposurePlan plan) {
        return of("EXPOSURE AND BITE PLAN", plan);
    }

    public static String of(String heading, ExposurePlan plan) {
        return new PlanText().write(heading, plan);
    }

    private String write(String heading, ExposurePlan plan) {
        line(heading);
        line("=".repeat(WIDTH));
        paragraph("", upperFirst(plan.summary()) + ".");
        line("");
        card(plan.card());
        plan.steps().stream()
                .filter(step -> step.title().equals(BenchOrder.FILM))
                .forEach(this::facts);
        cautionAndWarnings(plan);
        int number = 1;
        for (Step step : plan.atTheBench()) {
            step(number++, step);
        }
        line("-".repeat(WIDTH));
        paragraph("", "○ rests on a number that nobody has measured in this workshop. The numbers come from:");
        List<String> sources = notes.all();
        for (int i = 0; i < sources.size(); i++) {
            paragraph(String.format(Locale.ROOT, "%4s ", "[" + (i + 1) + "]"), sources.get(i));
        }
        return text.toString();
    }

    private void card(List<CardNumber> numbers) {
        for (CardNumber each : numbers) {
            String act = (each.restsOnAssumption() ? "○ " : "  ") + each.act();
            line(padded(padded(act, 12) + each.value(), 22) + each.conditions());
        }
        line("");
    }

    private void facts(Step film) {
        for (Line each : film.lines()) {
            paragraph(padded("  " + each.label(), 22), each.value());
        }
        line("");
    }

    private void cautionAndWarnings(ExposurePlan plan) {
        paragraph("", plan.caution());
        int warnings = plan.warnings().size();
        if (warnings > 0) {
            line("");
            paragraph("", warnings == 1 ? "1 warning, marked !! below." : warnings + " warnings, marked !! below.");
        }
        line("");
    }

    private void step(int number, Step step) {
        String title = String.format(Locale.ROOT, "[ ] %2d  %s ", number, step.title());
        String clock = step.seconds() > 0 ? " " + clock(step.seconds()) : "";
        String leader = clock.isEmpty() ? "" : ".".repeat(Math.max(2, WIDTH - title.length() - clock.length()));
        line(title + leader + clock);
        step.cautions().forEach(sentence -> paragraph(" CARE ", sentence));
        for (Line each : step.lines()) {
            number(each);
        }
        step.warnings().forEach(sentence -> paragraph("   !! ", sentence));
        step.advice().forEach(sentence -> paragraph("    - ", sentence));
        line("");
    }

    private void number(Line each) {
        if (each.value().isEmpty()) {
            line(" ".repeat(LABEL) + each.label());
            return;
        }
        String mark = each.restsOnAssumption() ? "○ " : "  ";
        String known = each.provenance().isEmpty() ? "" : mark + each.known() + notes.mark(each.basis());
        line(padded(padded(" ".repeat(LABEL) + each.label(), VALUE) + each.value(), PROVENANCE) + known);
    }

    private static String clock(double seconds) {
        long whole = Math.round(seconds);
        return whole < 3600
                ? String.format(Locale.ROOT, "%d:%02d min", whole / 60, whole % 60)
                : String.format(Locale.ROOT, "%d:%02d h", whole / 3600, whole % 3600 / 60);
    }

    /** Words wrapped to the page, further lines under the first word. A word too long for the page stands alone. */
    private void paragraph(String start, String words) {
        StringBuilder row = new StringBuilder(start);
        int indent = start.length();
        for (String word : BLANKS.split(words.trim(), -1)) {
            if (row.length() > indent && row.length() + 1 + word.length() > WIDTH) {
                line(row.toString());
                row = new StringBuilder(" ".repeat(indent));
            }
            if (row.length() > indent) {
                row.append(' ');
            }
            row.append(word);
        }
        line(row.toString());
    }

    private String padded(String start, int column) {
        return start.length() < column ? start + " ".repeat(column - start.length()) : start + " ";
    }

    private void line(String row) {
        text.append(row.stripTrailing()).append('\n');
    }

    private static String upperFirst(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
