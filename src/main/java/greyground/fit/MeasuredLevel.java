package greyground.fit;

/**
 * One coverage of a test plate, from its repeats.
 *
 * @param coverage of the film
 * @param lightness mean L* of the repeats that agree, drift taken out
 * @param repeats how many agree, as their weights count: (sum w)^2 / sum w^2
 * @param standardDeviation of a single reading, pooled from this level and its two neighbours on each side
 * @param degrees degrees of freedom of that
 */
public record MeasuredLevel(double coverage, double lightness, double repeats, double standardDeviation, int degrees) {
    /** Standard error of the mean, s / sqrt(n). */
    public double standardError() {
        return standardDeviation / Math.sqrt(repeats);
    }
}
