package greyground.app.bite;

import greyground.quantity.Concentrations;
import greyground.quantity.Density;
import greyground.quantity.Durations;
import greyground.quantity.Lengths;
import greyground.quantity.Refusal;
import greyground.quantity.Temperatures;
import greyground.workshop.Figure;
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
 * @param given words by name: depth, darkest, bitten, measured, proof-density, proof-depth, bath-temperature, bath-copper; other
 *     names are ignored. Several bitten and as many measured, a line each, are a log
 */
public record BiteWords(Map<String, String> given) {
    private static final List<String> WISHES =
            List.of("depth", "darkest", "bitten", "measured", "proof-density", "proof-depth");

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
        checkTogether(given, "depth", "darkest", "a bite has one goal");
        checkTogether(given, "proof-density", "proof-depth", "a proof tells the depth once");
        if (given.containsKey("measured")) {
            checkTogether(given, "measured", "proof-density", "a proof tells the depth once");
            checkTogether(given, "measured", "proof-depth", "a proof tells the depth once");
            String log = "the log tells what every further minute does";
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

    /** Whether tones measured on proofs are given. */
    public boolean logAsked() {
        return given.containsKey("measured");
    }

    /** The proofs of a log, in the order given. */
    List<Proof> proofs() {
        List<String> files = lines(given, "measured");
        List<Proof> proofs = new ArrayList<>();
        for (String time : lines(given, "bitten")) {
            proofs.add(new Proof(minutes(time), Path.of(files.get(proofs.size()))));
        }
        return proofs;
    }

    private static double minutes(String time) {
        return Refusal.checkRange(
                "minutes bitten so far",
                Durations.parseSeconds("minutes bitten so far", time) / 60,
                0.1,
                10_000,
                "min",
                "add up the bite log");
    }

    private static void checkTogether(Map<String, String> given, String one, String other, String why) {
        if (given.containsKey(one) && given.containsKey(other)) {
            throw Refusal.use("both --" + one + " and --" + other + " are given; " + why + ": leave one out");
        }
    }

    /** Whether a bite is to be planned at all. */
    public boolean asked() {
        return WISHES.stream().anyMatch(given::containsKey);
    }

    /** Whether the bath is told to be other than the workshop's file says. */
    public boolean bathTold() {
        return given.containsKey("bath-temperature") || given.containsKey("bath-copper");
    }

    OptionalDouble depthMicrometres() {
        String depth = given.get("depth");
        return depth == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(Refusal.checkRange(
                        "wanted depth",
                        Lengths.parseMicrometres("wanted depth", depth),
                        0.5,
                        300,
                        "µm",
                        "20 to 50 µm is a deep aquatint"));
    }

    OptionalDouble darkestLightness() {
        String darkest = given.get("darkest");
        if (darkest == null) {
            return OptionalDouble.empty();
        }
        try {
            double lightness = Double.parseDouble(darkest.strip().replaceFirst("(?i)^l\\*\\s*=?\\s*", ""));
            return OptionalDouble.of(
                    Refusal.checkRange("darkest tone", lightness, 1, 99, "L*", "15 to 30 is a deep black"));
        } catch (NumberFormatException notANumber) {
            throw Refusal.use("darkest tone is \"" + darkest
                    + "\"; it must be a lightness L* between 1 and 99: write a number, such as 24");
        }
    }

    OptionalDouble bittenMinutes() {
        String bitten = given.get("bitten");
        return bitten == null ? OptionalDouble.empty() : OptionalDouble.of(minutes(bitten));
    }

    OptionalDouble proofDensity() {
        String density = given.get("proof-density");
        return density == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        Density.parse("density of the proof's solid", density).optical());
    }

    OptionalDouble proofDepthMicrometres() {
        String depth = given.get("proof-depth");
        return depth == null
                ? OptionalDouble.empty()
                : OptionalDouble.of(Refusal.checkRange(
                        "depth at the proof",
                        Lengths.parseMicrometres("depth at the proof", depth),
                        0.1,
                        1000,
                        "µm",
                        "measure it in a wide bar's edge"));
    }

    /** Whether the bath's present copper was told. */
    boolean copperTold() {
        return given.containsKey("bath-copper");
    }

    /**
     * A workshop with the bath as it is told.
     *
     * @param today when it was read
     */
    public Workshop bath(Workshop workshop, LocalDate today) {
        Workshop now = workshop;
        String temperature = given.get("bath-temperature");
        if (temperature != null) {
            double celsius = Temperatures.parseCelsius("bath temperature", temperature);
            Refusal.checkRange("bath temperature", celsius, 5, 50, "C", "read a thermometer in the bath");
            now = now.with("bath.temperatureCelsius", Figure.measured(celsius, today, "told for this bite"));
        }
        String copper = given.get("bath-copper");
        if (copper != null) {
            double grams = Concentrations.parseGramsPerLitre("copper in the bath", copper);
            Refusal.checkRange("copper in the bath", grams, 0, 200, "g/L", "add up the bite log");
            now = now.with("bath.copperGramsPerLitre", Figure.measured(grams, today, "told for this bite"));
        }
        return now;
    }
}
