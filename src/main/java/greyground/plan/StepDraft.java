package greyground.plan;

import greyground.plan.ExposurePlan.Line;
import greyground.plan.ExposurePlan.Step;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.DoubleFunction;

/** A step being written. Used by one thread, then turned into a {@link Step}. */
final class StepDraft {
    private final String title;
    private double seconds;
    private final List<Line> lines = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final List<String> advice = new ArrayList<>();
    private final List<String> cautions = new ArrayList<>();
    private Optional<CardNumber> card = Optional.empty();

    StepDraft(String title) {
        this.title = title;
    }

    StepDraft stated(String label, String value) {
        if (!value.isBlank()) {
            lines.add(new Line(label, value, "", ""));
        }
        return this;
    }

    /** A number of the workshop in words, with its own provenance. */
    StepDraft known(String label, Figure figure, DoubleFunction<String> words) {
        return known(label, words.apply(figure.value()), figure);
    }

    StepDraft known(String label, String value, Figure figure) {
        lines.add(new Line(
                label, value, figure.provenance().words(), figure.provenance().basis()));
        return this;
    }

    /** The same under conditions that are said with where it comes from. */
    StepDraft known(String label, String value, Figure figure, String conditions) {
        String basis = figure.provenance().basis();
        lines.add(new Line(
                label, value, figure.provenance().words(), basis.isEmpty() ? conditions : conditions + "; " + basis));
        return this;
    }

    /** A number worked out from others; it is only as sure as they are. */
    StepDraft computed(String label, String value, String basis, Figure... from) {
        boolean sure = true;
        for (Figure figure : from) {
            sure &= !figure.isAssumed();
        }
        lines.add(new Line(label, value, sure ? "computed" : "computed from assumed", basis));
        return this;
    }

    StepDraft table(List<String> rows) {
        rows.forEach(row -> lines.add(Line.row(row)));
        return this;
    }

    /** Puts the number just said on the bench card, known as it is; of "150 s (2:30)" the card says "150 s". */
    StepDraft onCard(String act, String conditions, String... blanks) {
        Line last = lines.get(lines.size() - 1);
        String value = last.value().split(" \\(", 2)[0];
        card = Optional.of(new CardNumber(act, value, conditions, last.provenance(), List.of(blanks)));
        return this;
    }

    StepDraft clock(double wantedSeconds) {
        seconds = wantedSeconds;
        return this;
    }

    StepDraft warn(String sentence) {
        warnings.add(sentence);
        return this;
    }

    StepDraft advise(String sentence) {
        advice.add(sentence);
        return this;
    }

    StepDraft care(List<String> sentences) {
        cautions.addAll(sentences);
        return this;
    }

    Step done() {
        return new Step(title, seconds, lines, warnings, advice, cautions, card);
    }

    /** Seconds as read off a timer: "45 s", "150 s (2:30)"; under 10 s with a tenth. */
    static String seconds(double seconds) {
        if (seconds < 9.95) {
            return fixed(seconds, 1) + " s";
        }
        long whole = Math.round(seconds);
        return whole < 100
                ? whole + " s"
                : whole + " s (" + whole / 60 + ":" + String.format(Locale.ROOT, "%02d", whole % 60) + ")";
    }

    /** Minutes as read off a clock: under ten with a tenth, from ten on to the nearest half, "27 min" or "37.5 min". */
    static String minutes(double minutes) {
        String text = fixed(minutes < 9.95 ? minutes : Math.rint(minutes * 2) / 2, 1);
        return (text.endsWith(".0") ? text.substring(0, text.length() - 2) : text) + " min";
    }

    /** The same as seconds for a countdown, so that clock and words agree. */
    static double clockSeconds(double minutes) {
        return minutes < 9.95 ? Math.rint(minutes * 10) * 6 : Math.rint(minutes * 2) * 30;
    }

    static String micrometres(double value) {
        return Refusal.plain(Math.round(value * 10) / 10.0) + " µm";
    }

    static String celsius(double value) {
        return Refusal.plain(value) + " °C";
    }

    static String perLitre(double grams) {
        return fixed(grams, 1) + " g/L";
    }

    static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    static String times(double factor) {
        return "× " + fixed(factor, factor < 9.995 ? 2 : 1);
    }
}
