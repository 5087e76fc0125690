/**
 * Test plates made into films. Door: {@link greyground.app.chart.WedgeWork}.
 */
@NullMarked
package greyground.app.chart;

import org.jspecify.annotations.NullMarked;
