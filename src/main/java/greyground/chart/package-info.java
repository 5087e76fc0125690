/**
 * What a test plate prints: what lies where, in whole micrometres, and what its corner codes say. Door: {@link
 * greyground.chart.TestPlate}, made from a {@link greyground.chart.Recipe} or from the text of its own codes.
 */
@NullMarked
package greyground.chart;

import org.jspecify.annotations.NullMarked;
