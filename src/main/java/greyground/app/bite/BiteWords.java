package greyground.app.bite;

import greyground.plan.Bite;
import greyground.plan.BittenTones;
import greyground.plan.CopperWeight;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import greyground.workshop.Figure;
import greyground.workshop.Provenance;
import greyground.workshop.Workshop;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A wish for the bath in the words a person gives, such as depth "30um" and bath-copper "20g/L".
 *
 * @param given words by name: depth, darkest, bitten, measured, proof-density, proof-depth, weighed, bath-temperature,
 *     bath-copper; other
 *     names are ignored. Several bitten and as many measured, a line each, are a log
 */
public record BiteWords(Map<String, String> given) {
    private static final List<String> WISHES =
            List.of("depth", "darkest", "bitten", "measured", "proof-density", "proof-depth");

    private static final Range CELSIUS = new Range(5, 50, Unit.CELSIUS, "read a thermometer in the bath");
    private static final Range DENSITY = new Range(0, 10, Unit.DENSITY, "films reach 4.5, prints 2.2");
    private static final Range COPPER = new Range(0, 200, Unit.GRAMS, "add up the bite log");
    private static final int MOST_PROOFS = 50;

    /**
     * One proof of a log.
     *
     * @param minutes in the bath until then, from the first minute on
     * @param readings the file that holds its tones
     */
    public record Proof(double minutes, Path readings) {}

    public BiteWords {
        given = Map.copyOf(given);
        for (String other : List.of("depth", "darkest", "bitten", "measured", "proof-density")) {
            checkTogether(given, "weighed", other, "a scale answers by itself, or with --proof-depth");
        }
        checkTogether(given, "depth", "darkest", "a bite has one goal");
        checkTogether(given, "proof-density", "proof-depth", "a proof gives the depth once");
        if (given.containsKey("measured")) {
            checkTogether(given, "measured", "proof-density", "a proof gives the depth once");
            checkTogether(given, "measured", "proof-depth", "a proof gives the depth once");
            String log = "the log shows what every further minute does";
            checkTogether(given, "measured", "depth", log);
            checkTogether(given, "measured", "darkest", log);
            int bitten = lines(given, "bitten").size();
            int measured = lines(given, "measured").size();
            if (bitten != measured || measured > MOST_PROOFS) {
                throw Refusal.use("--bitten is given " + bitten + " times and --measured " + measured
                        + " times; each of at most " + MOST_PROOFS
                        + " proofs needs both: give the minutes so far and the readings of every proof, in order");
            }
        } else if (lines(given, "bitten").size() > 1) {
            throw Refusal.use("--bitten is given more than once; a bite log needs --measured with each: add the proofs'"
                    + " readings, or give one --bitten");
        }
        boolean proof =
                given.containsKey("proof-density") || given.containsKey("proof-depth") || given.containsKey("measured");
        proof &= !given.containsKey("weighed");
        if (given.containsKey("bitten") && !proof) {
            throw Refusal.use("--bitten is given but not what the proof showed: add --proof-density, such as 1.1, "
                    + " --proof-depth, such as 18um, or --measured with a file of tones");
        }
        if (proof && !given.containsKey("bitten")) {
            throw Refusal.use("a proof is given but not how long the plate was bitten: add --bitten, such as 12min");
        }
    }

    private static List<String> lines(Map<String, String> given, String name) {
        return given.containsKey(name) ? given.getOrDefault(name, "").lines().toList() : List.of();
    }

    public boolean logAsked() {
        return given.containsKey("measured");
    }

    List<Proof> proofs() {
        List<String> files = lines(given, "measured");
        List<Proof> proofs = new ArrayList<>();
        for (String time : lines(given, "bitten")) {
            proofs.add(
                    new Proof(checked("minutes bitten so far", time, Bite.SO_FAR), Path.of(files.get(proofs.size()))));
        }
        return proofs;
    }

    private static void checkTogether(Map<String, String> given, String one, String other, String why) {
        if (given.containsKey(one) && given.containsKey(other)) {
            throw Refusal.use("both --" + one + " and --" + other + " are given; " + why + ": leave one out");
        }
    }

    public boolean asked() {
        return weighedGrams().isPresent() || WISHES.stream().anyMatch(given::containsKey);
    }

    /** What the plate lost on the scale. */
    OptionalDouble weighedGrams() {
        return number("weighed", "copper lost", CopperWeight.LOST);
    }

    /** Whether the bath is told to be other than the workshop's file says. */
    public boolean bathTold() {
        return given.containsKey("bath-temperature") || given.containsKey("bath-copper");
    }

    private static double checked(String what, String text, Range range) {
        return range.check(what, range.unit().parse(what, text));
    }

    private OptionalDouble number(String option, String what, Range range) {
        String text = given.get(option);
        return text == null ? OptionalDouble.empty() : OptionalDouble.of(checked(what, text, range));
    }

    OptionalDouble depthMicrometres() {
        return number("depth", "wanted depth", Bite.WANTED);
    }

    OptionalDouble darkestLightness() {
        String darkest = given.get("darkest");
        if (darkest == null) {
            return OptionalDouble.empty();
        }
        try {
            double lightness = Double.parseDouble(darkest.strip().replaceFirst("(?i)^l\\*\\s*=?\\s*", ""));
            return OptionalDouble.of(BittenTones.checkedDarkest(lightness));
        } catch (NumberFormatException notANumber) {
            throw Refusal.use("darkest tone is \"" + darkest
                    + "\"; it must be a lightness L* between 1 and 99: write a number, such as 24");
        }
    }

    OptionalDouble bittenMinutes() {
        return number("bitten", "minutes bitten so far", Bite.SO_FAR);
    }

    OptionalDouble proofDensity() {
        return number("proof-density", "density of the proof's solid", DENSITY);
    }

    OptionalDouble proofDepthMicrometres() {
        return number("proof-depth", "depth at the proof", Bite.PROVED);
    }

    boolean copperTold() {
        return given.containsKey("bath-copper");
    }

    /**
     * A workshop with the bath as it is told.
     *
     * @param today when it was read
     */
    public Workshop bath(Workshop workshop, LocalDate today) {
        return told(
                told(workshop, "bath-temperature", "bath temperature", CELSIUS, "bath.temperatureCelsius", today),
                "bath-copper",
                "copper in the bath",
                COPPER,
                "bath.copperGramsPerLitre",
                today);
    }

    private Workshop told(Workshop shop, String option, String what, Range range, String path, LocalDate today) {
        OptionalDouble told = number(option, what, range);
        return told.isEmpty() ? shop : shop.with(path, new Figure(told.getAsDouble(), new Provenance.Typed(today)));
    }
}
