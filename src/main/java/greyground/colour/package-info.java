/**
 * Colours as they are seen and as inks make them: tristimulus values, CIELAB and how far two colours lie apart; smooth spectra in bands; and
 * what several plates print over one another. Door: {@link greyground.colour.InksInRegister}.
 *
 * <p>Colours are of the CIE 1931 observer of 2 degrees under D50. Arithmetic is strict ({@link java.lang.StrictMath}).
 */
@NullMarked
package greyground.colour;

import org.jspecify.annotations.NullMarked;
