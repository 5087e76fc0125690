/**
 * Distances to edges on a grid of micrometres, finer than the grid, and rounding and softening by them. Door: {@link
 * greyground.plate.edge.EdgeDistance}.
 */
@NullMarked
package greyground.plate.edge;

import org.jspecify.annotations.NullMarked;
