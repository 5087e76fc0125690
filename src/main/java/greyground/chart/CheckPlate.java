package greyground.chart;

import greyground.quantity.Refusal;
import greyground.tone.PlateResponse;
import greyground.tone.ResponseInverse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A test plate that asks whether a workshop's calibration holds: each of its tones should print at a stated lightness, that of the
 * response at the very coverage on the film.
 *
 * @param plate where everything lies
 * @param tones from light to dark, bare paper first
 */
public record CheckPlate(TestPlate plate, List<Tone> tones) {
    /** Tones besides bare paper. */
    public static final int TONES = 12;

    /** About the least difference that is seen side by side (from memory, unverified). */
    private static final double SEEN = 1;

    private static final int MOST_TONES = 40;

    /**
     * A tone and how it should print.
     *
     * @param coveragePerMille of the film, 0 clear to 1000 solid
     * @param lightness CIE L*, absolute, at which it should print
     * @param predictedCoverage what the uncalibrated response would have put on the film for that lightness, 0 to 1; empty where no
     *     measured response replaces it, or where it can't print that lightness
     */
    public record Tone(int coveragePerMille, double lightness, Optional<Double> predictedCoverage) {
        public Tone {
            Refusal.checkRange("check plate's coverage", coveragePerMille / 10.0, 0, 100, "%", "make the film again");
            Refusal.checkRange("check plate's lightness", lightness, 0, 100, "L*", "make the film again");
            predictedCoverage.ifPresent(coverage ->
                    Refusal.checkRange("predicted coverage", coverage * 100, 0, 100, "%", "make the film again"));
        }
    }

    public CheckPlate {
        tones = List.copyOf(tones);
    }

    /** Lays out a plate of such tones, each at least four times. */
    public static CheckPlate of(Recipe recipe, List<Tone> tones) {
        List<Integer> levels = tones.stream().map(Tone::coveragePerMille).toList();
        if (tones.size() < 2
                || tones.size() > MOST_TONES
                || levels.stream().distinct().count() < levels.size()
                || !levels.equals(levels.stream().sorted().toList())) {
            throw Refusal.use("a check plate has tones of " + levels + " per mille; it must have 2 to " + MOST_TONES
                    + ", rising: make the film again");
        }
        return new CheckPlate(WedgeGrid.of(recipe, levels), tones);
    }

    /**
     * Tones at even steps of lightness over all that a response can print in order, and bare paper.
     *
     * @param inUse sets the curve of the workshop's films
     * @param predicted the response without any calibration, if another is in use
     */
    public static List<Tone> tones(PlateResponse inUse, Optional<PlateResponse> predicted) {
        ResponseInverse inverse = new ResponseInverse(inUse);
        Optional<ResponseInverse> before = predicted.map(ResponseInverse::new);
        List<Tone> tones = new ArrayList<>();
        tones.add(new Tone(0, inUse.lightness(0), Optional.empty()));
        // Where tones set in softly, the lightest one is bare paper again.
        boolean gap = inverse.paperLightness() - inverse.lightestLightness() > SEEN;
        int least = (int) Math.ceil(inUse.usable().least() * 1000 - 1e-9);
        int most = (int) Math.floor(inUse.usable().most() * 1000 + 1e-9);
        for (int step = 0; step < TONES; step++) {
            double share = gap ? (double) step / (TONES - 1) : (step + 1.0) / TONES;
            double wished =
                    inverse.lightestLightness() + (inverse.darkestLightness() - inverse.lightestLightness()) * share;
            int coverage = Math.max(least, Math.min(most, (int) Math.round(inverse.coverage(wished) * 1000)));
            if (tones.stream().noneMatch(tone -> tone.coveragePerMille() == coverage)) {
                double stated = inUse.lightness(coverage / 1000.0);
                tones.add(new Tone(
                        coverage,
                        stated,
                        before.filter(other -> other.attainable(stated)).map(other -> other.coverage(stated))));
            }
        }
        tones.sort(Comparator.comparingInt(Tone::coveragePerMille));
        return tones;
    }

    /** How a coverage of this plate should print. */
    public double lightness(int coveragePerMille) {
        return tones.stream()
                .filter(tone -> tone.coveragePerMille() == coveragePerMille)
                .mapToDouble(Tone::lightness)
                .findFirst()
                .orElseThrow(() -> Refusal.use("coverage " + coveragePerMille / 10.0
                        + " % is none of the check plate's tones: give the film that the plate was made with"));
    }
}
