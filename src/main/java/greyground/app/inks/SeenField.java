package greyground.app.inks;

import greyground.chart.InkPatch;
import greyground.colour.Xyz;

/**
 * A field of the print that was read.
 *
 * @param colour absolute
 */
record SeenField(InkPatch patch, Xyz colour) {}
