package greyground.plan;

import greyground.quantity.Refusal;

/**
 * A transmission step wedge and what it says about exposure.
 *
 * <p>Density of step k is first + 0.15 (k - 1); a nominal wedge of 21 steps runs from 0.05 to 3.05 (quoted from wedge data by a
 * flatbed-scanner densitometry note, 2008). One step is 10^0.15 = 1.4125 in exposure, close to but not the square root of two.
 *
 * @param firstDensity density of step 1, 0 to 1
 * @param steps how many, 2 to 60
 */
public record StepWedge(double firstDensity, int steps) {
    /** Density from one step to the next. */
    public static final double DENSITY_PER_STEP = 0.15;

    public StepWedge {
        Refusal.checkRange("wedge's first density", firstDensity, 0, 1, "", "0.05 is nominal");
        Refusal.checkRange("wedge steps", steps, 2, 60, "", "21 is usual");
    }

    /** The nominal wedge of 21 steps. */
    public static StepWedge nominal() {
        return new StepWedge(0.05, 21);
    }

    /** Density of a step counted from 1; steps between two whole ones are read by eye and allowed. */
    public double density(double step) {
        return firstDensity + DENSITY_PER_STEP * (step - 1);
    }

    /** Step of a density, the inverse of {@link #density}; between two whole steps a fraction. */
    public double step(double density) {
        return 1 + (density - firstDensity) / DENSITY_PER_STEP;
    }

    /**
     * By how much to multiply an exposure that held step {@code held} so that it holds {@code target}:
     * 10^(0.15 (target - held)). Exact for a resist that adds up dose (reciprocity holds).
     */
    public static double exposureFactor(double held, double target) {
        return StrictMath.pow(10, DENSITY_PER_STEP * (target - held));
    }
}
