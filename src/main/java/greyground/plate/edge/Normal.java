package greyground.plate.edge;

/**
 * The normal distribution with mean 0 and standard deviation 1, by the rational approximations of Abramowitz and Stegun 1964
 * (26.2.17 and 26.2.23; coefficients from memory, checked against tabled values).
 */
public final class Normal {
    private Normal() {}

    /** Share below z; off by less than 7.5e-8. */
    public static double below(double z) {
        double t = 1 / (1 + 0.2316419 * Math.abs(z));
        double tail = StrictMath.exp(-z * z / 2)
                / Math.sqrt(2 * Math.PI)
                * t
                * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
        return z > 0 ? 1 - tail : tail;
    }

    /**
     * The z with a share below it; off by less than 4.5e-4.
     *
     * @param share above 0 and below 1
     */
    public static double deviations(double share) {
        double tail = Math.min(share, 1 - share);
        double t = Math.sqrt(-2 * StrictMath.log(tail));
        double z =
                t - (2.515517 + t * (0.802853 + t * 0.010328)) / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308)));
        return share < 0.5 ? -z : z;
    }
}
