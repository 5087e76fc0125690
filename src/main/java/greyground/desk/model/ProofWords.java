package greyground.desk.model;

import greyground.app.bite.LoggedProof;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A proof of the bite log as it is typed at the bench, and told again. */
public final class ProofWords {
    private static final Pattern LINE =
            Pattern.compile("([0-9]+(?:[.,][0-9]+)?)\\s*%?\\s*[;:\\s]\\s*([0-9]+(?:[.,][0-9]+)?)");

    private ProofWords() {}

    /** What was measured on the proof. */
    public enum Kind {
        LIGHTNESS("lightness L*", "10 84.2, 40 57.5, 80 25"),
        DENSITY("density", "10 0.17, 40 0.55, 80 1.35"),
        DEPTH("copper's depth, µm", "18.5");

        private final String label;
        private final String example;

        Kind(String label, String example) {
            this.label = label;
            this.example = example;
        }

        public String label() {
            return label;
        }

        /** How it is written. */
        public String example() {
            return example;
        }
    }

    /**
     * Reads what was typed.
     *
     * @param minutes in the bath until then
     * @param measured a depth in micrometres, or coverage and tone in pairs, a pair on each line or after a comma and a blank
     */
    public static LoggedProof read(String minutes, Kind kind, String measured) {
        double time = number("minutes bitten so far", minutes);
        if (kind == Kind.DEPTH) {
            return new LoggedProof(time, OptionalDouble.of(number("depth at the proof", measured)), List.of());
        }
        List<LoggedProof.Tone> tones = new ArrayList<>();
        for (String part : measured.split("\\n|,\\s+|,$", -1)) {
            if (part.isBlank()) {
                continue;
            }
            Matcher pair = LINE.matcher(part.strip());
            if (!pair.matches()) {
                throw Refusal.use("\"" + part.strip() + "\" is not a film coverage and a tone: write pairs, such as "
                        + kind.example());
            }
            double coverage = number("film coverage", pair.group(1));
            double tone = number("tone", pair.group(2));
            tones.add(
                    kind == Kind.DENSITY
                            ? LoggedProof.Tone.ofDensity(coverage, tone)
                            : new LoggedProof.Tone(coverage, tone));
        }
        if (tones.size() < 2) {
            throw Refusal.use("the proof has " + tones.size()
                    + " tones; it must have at least 2: write pairs of film coverage and tone, such as "
                    + kind.example());
        }
        return new LoggedProof(time, OptionalDouble.empty(), tones);
    }

    private static double number(String what, String text) {
        try {
            return Double.parseDouble(text.strip().replace(',', '.'));
        } catch (NumberFormatException notANumber) {
            throw Refusal.use(what + " is \"" + text.strip() + "\", not a number: type digits, without the unit");
        }
    }

    public static String of(LoggedProof proof) {
        String time = "after " + Refusal.plain(proof.minutes()) + " min: ";
        if (proof.depthMicrometres().isPresent()) {
            return time + "copper bitten "
                    + Refusal.plain(proof.depthMicrometres().getAsDouble()) + " µm deep";
        }
        List<String> tones = proof.tones().stream()
                .map(tone -> String.format(
                        Locale.ROOT, "%s %% L* %.1f", Refusal.plain(tone.coveragePercent()), tone.lightness()))
                .toList();
        return time + String.join(", ", tones);
    }
}
