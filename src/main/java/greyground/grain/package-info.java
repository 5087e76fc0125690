/**
 * Stochastic grain, halftone dots and aquatint screens, all as {@link greyground.grain.ThresholdTile}: a rectangle of
 * thresholds at film resolution that repeats over the film. Door: {@link greyground.grain.ThresholdTile}.
 */
@NullMarked
package greyground.grain;

import org.jspecify.annotations.NullMarked;
