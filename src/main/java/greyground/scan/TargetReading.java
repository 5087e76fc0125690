package greyground.scan;

import greyground.chart.Target;

/**
 * The tone over one target.
 *
 * @param target of the layout
 * @param lightness mean CIE L*, absolute, 0 to 100
 */
public record TargetReading(Target target, double lightness) {}
