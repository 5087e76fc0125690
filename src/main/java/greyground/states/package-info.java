/**
 * What was done to a plate: exposures, bites, proofs, depths, numbers of the edition, in the order in which they were written down, and the
 * states that follow from them.
 *
 * <p>Door: {@link greyground.states.PlateRecord}; its file, {@link greyground.states.PlateRecordFile}.
 */
@NullMarked
package greyground.states;

import org.jspecify.annotations.NullMarked;
