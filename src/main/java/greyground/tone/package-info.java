/**
 * Lightness, density, tone value and dot gain; monotone curves, isotonic fit and their inverses; range mapping; and
 * {@link greyground.tone.PlateResponse}, the seam through which any plate, assumed, simulated or measured, sets the curve. May import
 * {@code quantity}.
 */
@NullMarked
package greyground.tone;

import org.jspecify.annotations.NullMarked;
