package greyground.grain;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Bands that appear where two patterns of dots lie over each other: a wave f1 of one and a wave f2 of the other beat at
 * {@code f1 - f2}. Bands finer than the eye parts, or fainter than it sees, are left out.
 *
 * @param beats strongest first
 */
public record Interference(List<Beat> beats) {
    /** Finest bands that an eye parts with ease on a print in the hand, one to the millimetre (assumed). */
    public static final double FINEST_PER_MILLIMETRE = 1;

    /** Bands wider than a large plate are no bands but a tone, 500 mm (assumed). */
    private static final double COARSEST_PER_MILLIMETRE = 1.0 / 500;

    /** The eye's least contrast for bands of some millimetres is about half a percent (from memory, unverified). */
    private static final double FAINTEST = 0.005;

    /** Beats nearer than this, in cycles to the millimetre, are told as one. */
    private static final double TOLD_APART = 0.002;

    /**
     * One set of bands.
     *
     * @param perMillimetre bands to the millimetre
     * @param directionDegrees in which the bands follow one another, against the film's width, counter-clockwise, 0 to 180
     * @param strength amplitude of the bands in the light that passes both films, 0 to 0.5
     */
    public record Beat(double perMillimetre, double directionDegrees, double strength) {
        /** From band to band. */
        public double spacingMillimetres() {
            return 1 / perMillimetre;
        }
    }

    public Interference {
        beats = List.copyOf(beats);
    }

    /**
     * Foretells the bands.
     *
     * @param one of the films, as blurred as it reaches the resist
     * @param other the film that is exposed on the same plate, alike
     */
    public static Interference between(DotSpectrum one, DotSpectrum other) {
        List<Beat> all = new ArrayList<>();
        for (DotSpectrum.Peak first : one.peaks()) {
            for (DotSpectrum.Peak second : other.peaks()) {
                double across = first.across() - second.across();
                double up = first.up() - second.up();
                double frequency = StrictMath.hypot(across, up);
                // Each beat comes twice, as itself and its opposite; the one that points up, or right, is kept.
                boolean kept = up > 1e-12 || (Math.abs(up) <= 1e-12 && across > 0);
                double strength = first.amplitude() * second.amplitude() / 2;
                if (kept
                        && frequency <= FINEST_PER_MILLIMETRE
                        && frequency >= COARSEST_PER_MILLIMETRE
                        && strength >= FAINTEST) {
                    all.add(new Beat(frequency, Math.toDegrees(StrictMath.atan2(up, across)) % 180, strength));
                }
            }
        }
        all.sort(Comparator.comparingDouble(Beat::strength)
                .reversed()
                .thenComparing(Beat::perMillimetre)
                .thenComparing(Beat::directionDegrees));
        List<Beat> apart = new ArrayList<>();
        for (Beat beat : all) {
            if (apart.stream().noneMatch(told -> isOne(told, beat))) {
                apart.add(beat);
            }
        }
        return new Interference(apart);
    }

    private static boolean isOne(Beat told, Beat beat) {
        double turn = Math.toRadians(told.directionDegrees() - beat.directionDegrees());
        double apart = StrictMath.hypot(
                told.perMillimetre() - beat.perMillimetre() * StrictMath.cos(turn),
                beat.perMillimetre() * StrictMath.sin(turn));
        return apart < TOLD_APART;
    }

    /** The strongest bands; empty where none will be seen. */
    public Optional<Beat> worst() {
        return beats.stream().findFirst();
    }

    /** One line for the bench, such as "bands 5 mm apart, one after another at 90 degrees, strength 0.12". */
    public String words() {
        return worst().map(beat -> "bands " + Refusal.plain(Math.rint(beat.spacingMillimetres() * 10) / 10)
                        + " mm apart, one after another at "
                        + Refusal.plain(Math.rint(beat.directionDegrees())) + " degrees to the film's width, strength "
                        + Refusal.plain(Math.rint(beat.strength() * 1000) / 1000))
                .orElse("none");
    }
}
