package greyground.app.inks;

import greyground.chart.InkPatch;
import greyground.colour.Lab;
import greyground.colour.Xyz;

/**
 * A field of the print that was read.
 *
 * @param colour absolute
 */
record SeenField(InkPatch patch, Xyz colour) {
    /** CIEDE2000. */
    double differenceFrom(SeenField other) {
        return Lab.of(colour).difference(Lab.of(other.colour));
    }
}
