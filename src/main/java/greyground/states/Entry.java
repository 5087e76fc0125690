package greyground.states;

import greyground.quantity.Durations;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.Optional;
import java.util.OptionalDouble;

/** One thing that was done to a plate, or found out about it. The limits are far beyond what is usual (assumed). */
public sealed interface Entry {
    /** For a person, small at its beginning and without a full stop. */
    String words();

    /**
     * Light on the resist.
     *
     * @param screenSeconds through the screen, 0 where there was none
     * @param imageSeconds through the positive
     */
    record Exposed(double screenSeconds, double imageSeconds) implements Entry {
        public static final Range SECONDS = new Range(0, 86_400, Unit.SECONDS, "write down what the lamp's clock said");

        public Exposed {
            SECONDS.check("screen exposure", screenSeconds);
            SECONDS.check("image exposure", imageSeconds);
        }

        @Override
        public String words() {
            String image = Durations.format(imageSeconds);
            return screenSeconds == 0
                    ? "exposed " + image
                    : "exposed " + Durations.format(screenSeconds) + " through the screen and " + image
                            + " through the positive";
        }
    }

    /**
     * One stay in the bath.
     *
     * @param minutes of this bite alone
     * @param celsius of the bath
     * @param copperGramsPerLitre in the bath
     */
    record Bitten(double minutes, OptionalDouble celsius, OptionalDouble copperGramsPerLitre) implements Entry {
        public static final Range MINUTES = new Range(0.1, 10_000, Unit.MINUTES, "give the minutes of this bite alone");
        public static final Range CELSIUS = new Range(5, 50, Unit.CELSIUS, "read a thermometer in the bath");
        public static final Range COPPER = new Range(0, 200, Unit.GRAMS, "add up the bite log");

        public Bitten {
            MINUTES.check("time in the bath", minutes);
            celsius.ifPresent(value -> CELSIUS.check("the bath's temperature", value));
            copperGramsPerLitre.ifPresent(value -> COPPER.check("copper in the bath", value));
        }

        @Override
        public String words() {
            return "bitten " + Refusal.plain(minutes) + " min" + said(" at ", celsius, " \u00b0C")
                    + said(", ", copperGramsPerLitre, " g/L of copper in the bath");
        }
    }

    /**
     * Work on the bare copper by hand, such as burnishing.
     *
     * @param what was done, 1 to 500 letters
     */
    record Reworked(String what) implements Entry {
        public Reworked {
            checkText("what was reworked", what);
        }

        @Override
        public String words() {
            return "reworked: " + what;
        }
    }

    /**
     * What a gauge or a scale said; at least one of them.
     *
     * @param depthMicrometres of a deep well
     * @param lostGrams what the plate lost since it was weighed first
     */
    record Measured(OptionalDouble depthMicrometres, OptionalDouble lostGrams) implements Entry {
        public static final Range DEPTH = new Range(0.1, 1000, Unit.MICROMETRES, "measure it in a wide bar's edge");
        public static final Range LOST = new Range(0.01, 10_000, Unit.WEIGHT, "weigh the plate bare and dry");

        public Measured {
            depthMicrometres.ifPresent(value -> DEPTH.check("depth", value));
            lostGrams.ifPresent(value -> LOST.check("copper lost", value));
            if (depthMicrometres.isEmpty() && lostGrams.isEmpty()) {
                throw Refusal.use("neither depth nor weight is given; one of them must be: such as 38um or 9.4g");
            }
        }

        @Override
        public String words() {
            String depth = said("", depthMicrometres, " \u00b5m deep");
            String lost = said("", lostGrams, " g lighter");
            return "measured " + depth + (depth.isEmpty() || lost.isEmpty() ? "" : ", ") + lost;
        }
    }

    /**
     * A proof pulled.
     *
     * @param scan of it, where it was scanned
     * @param solidDensity of a deep solid on it, paper included
     */
    record Proofed(Optional<NamedFile> scan, OptionalDouble solidDensity) implements Entry {
        public static final Range DENSITY = new Range(0, 10, Unit.DENSITY, "prints reach 2.2");

        public Proofed {
            solidDensity.ifPresent(value -> DENSITY.check("density of the proof's solid", value));
        }

        @Override
        public String words() {
            return "proof pulled" + scan.map(file -> ", scan " + file.name()).orElse("")
                    + said(", a solid at ", solidDensity, " D");
        }
    }

    /**
     * Prints of the edition.
     *
     * @param first number, from 1
     * @param last number
     * @param edition how many there shall be
     */
    record Printed(int first, int last, int edition) implements Entry {
        private static final int MOST = 100_000;

        public Printed {
            if (first < 1 || last < first || edition < last || edition > MOST) {
                throw Refusal.use("numbers " + first + " to " + last + " of " + edition
                        + " can't be; they must rise from 1 to the edition's size, at most " + MOST
                        + ": write them such as 1-10/25");
            }
        }

        @Override
        public String words() {
            return (first == last ? "number " + first : "numbers " + first + " to " + last) + " of " + edition
                    + " printed";
        }
    }

    /**
     * Anything else worth knowing.
     *
     * @param text 1 to 500 letters
     */
    record Noted(String text) implements Entry {
        public Noted {
            checkText("the note", text);
        }

        @Override
        public String words() {
            return "note: " + text;
        }
    }

    private static String said(String before, OptionalDouble number, String after) {
        return number.isPresent() ? before + Refusal.plain(number.getAsDouble()) + after : "";
    }

    private static void checkText(String what, String text) {
        if (text.isBlank() || text.length() > PlateRecord.LONGEST_TEXT) {
            throw Refusal.use(what + " has " + text.strip().length() + " letters; it must have 1 to "
                    + PlateRecord.LONGEST_TEXT + ": shorten it, or write it in two entries");
        }
    }
}
