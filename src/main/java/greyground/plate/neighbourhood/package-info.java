/**
 * A whole plate by look-up. Light, resist, bite and ink reach some 60 µm, three or four film pixels, so what a film pixel prints is
 * decided by the few dozen bits of film round it; and those patterns repeat. The engine runs once over a sample of the job's own grain,
 * a table notes what the middle pixel of each pattern prints, and the plate is read by that table. What the table has never seen, the
 * engine computes on the film itself. Only the pad reaches farther: where black is wide it gets a step of its own. Door: {@link
 * greyground.plate.neighbourhood.NeighbourhoodPlate}.
 */
@NullMarked
package greyground.plate.neighbourhood;

import org.jspecify.annotations.NullMarked;
