/**
 * Lightness, density, tone value and dot gain; monotone curves, isotonic fit and their inverses; range mapping; and {@link
 * greyground.tone.PlateResponse}, the seam through which any plate, assumed, simulated or measured, sets the curve. {@link
 * greyground.tone.Compensation} makes a job's {@link greyground.tone.ToneCurve}. Door: {@link greyground.tone.Compensation}.
 *
 * <p>Arithmetic that ends in a film is strict ({@link java.lang.StrictMath}), so that every machine makes the same film.
 */
@NullMarked
package greyground.tone;

import org.jspecify.annotations.NullMarked;
