/**
 * Stochastic grain, halftone dots and aquatint screens, all as {@link greyground.grain.ThresholdTile}: a rectangle of
 * thresholds at film resolution that repeats over the film; and the bands that two films of them give together, {@link
 * greyground.grain.Interference}. Door: {@link greyground.grain.ThresholdTile}.
 */
@NullMarked
package greyground.grain;

import org.jspecify.annotations.NullMarked;
