/**
 * Clocks of the plan's timed steps, which outlive a closed window. No window is needed for them. Door: {@link greyground.desk.clock.BenchClocks}.
 */
@NullMarked
package greyground.desk.clock;

import org.jspecify.annotations.NullMarked;
