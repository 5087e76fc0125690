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
}
