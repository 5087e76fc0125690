package greyground.plan;

/**
 * A transmission step wedge of 21 steps and what it says about exposure.
 *
 * <p>Density of step k is 0.05 + 0.15 (k - 1), from 0.05 to 3.05 (quoted from wedge data by a flatbed-scanner densitometry note, 2008).
 * One step is 10^0.15 = 1.4125 in exposure, close to but not the square root of two.
 */
public final class StepWedge {
    /** How many. */
    public static final int STEPS = 21;

    /** Density from one step to the next. */
    public static final double DENSITY_PER_STEP = 0.15;

    private static final double FIRST_DENSITY = 0.05;

    private StepWedge() {}

    /** Density of a step counted from 1; steps between two whole ones are read by eye and allowed. */
    public static double density(double step) {
        return FIRST_DENSITY + DENSITY_PER_STEP * (step - 1);
    }

    /** Step of a density, the inverse of {@link #density}; between two whole steps a fraction. */
    public static double step(double density) {
        return 1 + (density - FIRST_DENSITY) / DENSITY_PER_STEP;
    }

    /**
     * By how much to multiply an exposure that held step {@code held} so that it holds {@code target}:
     * 10^(0.15 (target - held)). Exact for a resist that adds up dose (reciprocity holds).
     */
    public static double exposureFactor(double held, double target) {
        return StrictMath.pow(10, DENSITY_PER_STEP * (target - held));
    }
}
