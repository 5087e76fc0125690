package greyground.colour;

/**
 * What a plate prints in every band of light, from what it prints in a few lights of the virtual plate: in those that its ink takes so and so
 * strongly.
 */
public interface InkLight {
    /** Strengths at which the plate is to be seen, per µm, the strongest first: that of the light that the ink takes most of. */
    double[] strengths();

    /**
     * Logarithm of the share of light that a place sends back in a band, 0 or less.
     *
     * @param logarithms of the share that it sends back at each of the strengths
     */
    double logarithm(int band, double[] logarithms);
}
