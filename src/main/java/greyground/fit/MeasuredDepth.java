package greyground.fit;

import greyground.quantity.Refusal;

/**
 * How deep a plate was bitten, from readings on its bare strip, by step or by weight.
 *
 * @param micrometres mean depth, 1 to 1000
 * @param standardError of the mean; for a single reading the error it is said to have
 */
public record MeasuredDepth(double micrometres, double standardError) {
    public MeasuredDepth {
        Refusal.checkRange("measured depth", micrometres, 1, 1000, "µm", "measure the bare strip again");
        Refusal.checkRange("error of the measured depth", standardError, 0, 500, "µm", "give one standard error");
    }

    /** From two readings or more, the error being s / sqrt(n). */
    public static MeasuredDepth of(double... readings) {
        Refusal.checkRange("readings of depth", readings.length, 2, 10_000, "", "measure at two places or more");
        double mean = 0;
        for (double one : readings) {
            mean += one / readings.length;
        }
        double squares = 0;
        for (double one : readings) {
            squares += (one - mean) * (one - mean);
        }
        return new MeasuredDepth(mean, Math.sqrt(squares / (readings.length - 1) / readings.length));
    }
}
