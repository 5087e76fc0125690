/**
 * What the window knows, without a window: the job on the bench and the way back through every change, clocks, notes, recovery,
 * pan and zoom. A test keeps the window's library out. Door: {@link greyground.desk.model.BenchModel}.
 */
@NullMarked
package greyground.desk.model;

import org.jspecify.annotations.NullMarked;
