package greyground.tone;

import greyground.quantity.Refusal;

/**
 * The film coverages a plate can hold in order.
 *
 * @param least the lightest tone that washes out and bites, 0 to 1; lighter than this prints as bare paper
 * @param most the turning point, above {@code least} and at most 1; more black than this prints paler
 */
public record UsableCoverage(double least, double most) {
    public UsableCoverage {
        if (!(least >= 0 && least < most && most <= 1)) {
            throw Refusal.use("usable coverage is " + least + " to " + most
                    + "; it must rise and lie between 0 and 1: check the workshop's resist and bath");
        }
    }
}
