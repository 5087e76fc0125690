package greyground.app.bite;

import greyground.fit.DepthFit;
import greyground.plan.Bite;
import greyground.quantity.Refusal;
import greyground.tone.Lightness;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One proof of a plate's bite log, as it is written down at the bench.
 *
 * @param minutes in the bath until then, from the first minute on, 0.1 to 10 000
 * @param depthMicrometres if the copper's own depth was measured, 0.5 to 120; then no tones are needed
 * @param tones measured on the proof; none where the depth was measured
 */
public record LoggedProof(double minutes, OptionalDouble depthMicrometres, List<Tone> tones) {
    /** A depth read at the edge of a wide bar is taken as true to this (assumed). */
    public static final double DEPTH_ERROR = 1;

    public LoggedProof {
        tones = List.copyOf(tones);
        Bite.SO_FAR.check("minutes bitten so far", minutes);
        depthMicrometres.ifPresent(depth ->
                Refusal.checkRange("depth at the proof", depth, 0.5, 120, "µm", "measure it in a wide bar's edge"));
        if (depthMicrometres.isPresent() != tones.isEmpty()) {
            throw Refusal.use("a proof shows its depth or its tones: give one of them");
        }
    }

    /**
     * A tone of the proof.
     *
     * @param coveragePercent of the film there, 0 to 100
     * @param lightness measured, L*, 0 to 100
     */
    public record Tone(double coveragePercent, double lightness) {
        public Tone {
            reading(coveragePercent, lightness);
        }

        /** A tone measured as density, paper included, 0 to 4. */
        public static Tone ofDensity(double coveragePercent, double density) {
            Refusal.checkRange("proof tone's density", density, 0, 4, "D", "measure it again");
            return new Tone(coveragePercent, Lightness.ofDensity(density));
        }
    }

    private static DepthFit.Reading reading(double coveragePercent, double lightness) {
        return new DepthFit.Reading(coveragePercent / 100, lightness, DepthFit.READING_ERROR);
    }

    List<DepthFit.Reading> readings() {
        return tones.stream()
                .map(tone -> reading(tone.coveragePercent(), tone.lightness()))
                .toList();
    }
}
