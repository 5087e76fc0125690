/**
 * Writes down what was done to a plate, and prints the plate's record.
 *
 * <p>Door: {@link greyground.app.record.RecordWork}.
 */
@NullMarked
package greyground.app.record;

import org.jspecify.annotations.NullMarked;
