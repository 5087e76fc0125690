package greyground.tone;

import java.util.function.DoubleUnaryOperator;

/** Discs on a square lattice, the geometry shared by the laws of round dots. */
final class Discs {
    /** Coverage at which discs on a square lattice touch, pi/4. */
    static final double TOUCHING = Math.PI / 4;

    private Discs() {}

    /**
     * Share of the plane that discs of one radius cover when they stand on a square lattice, overlaps counted once: four caps
     * are taken off each disc where it passes its cell.
     */
    static double share(double radius, double pitch) {
        double half = pitch / 2;
        if (radius <= 0) {
            return 0;
        }
        if (radius <= half) {
            return Math.PI * radius * radius / (pitch * pitch);
        }
        if (radius >= pitch / StrictMath.sqrt(2)) {
            return 1;
        }
        double caps = radius * radius * StrictMath.acos(half / radius)
                - half * StrictMath.sqrt(radius * radius - half * half);
        return Math.min(1, (Math.PI * radius * radius - 4 * caps) / (pitch * pitch));
    }

    /** Radius of discs that cover a share up to {@link #TOUCHING}. */
    static double radius(double coverage, double pitch) {
        return pitch * StrictMath.sqrt(coverage / Math.PI);
    }

    /**
     * Joins the law of dots, good up to half coverage, to the law of holes, good from where dots would touch.
     *
     * <p>Between the two neither picture is true: dots are merging and holes not yet round. A straight bridge keeps the tone
     * rising there (assumed; at half coverage the two laws differ by about two points for 10 µm at 60 lines/cm).
     */
    static double bridged(double coverage, DoubleUnaryOperator dots, DoubleUnaryOperator holes) {
        if (coverage <= 0 || coverage >= 1) {
            return coverage <= 0 ? 0 : 1;
        }
        if (coverage <= 0.5) {
            return dots.applyAsDouble(coverage);
        }
        double start = dots.applyAsDouble(0.5);
        if (coverage >= TOUCHING) {
            return Math.max(start, holes.applyAsDouble(coverage));
        }
        double end = Math.max(start, holes.applyAsDouble(TOUCHING));
        return start + (end - start) * (coverage - 0.5) / (TOUCHING - 0.5);
    }
}
