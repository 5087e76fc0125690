package greyground.colour;

/**
 * What a plate prints in every band of light, from what it prints in a few lights of the virtual plate: in those that its ink takes so and so
 * strongly.
 */
public interface InkLight {
    /** Strengths at which the plate is to be seen, per µm, the strongest first: that of the light that the ink takes most of. */
    double[] strengths();

    /**
     * Logarithm of what is let through in a band, 0 or less.
     *
     * @param logarithms of what is let through at each of the strengths
     */
    double logarithm(int band, double[] logarithms);
}
