/**
 * Samples of any ink become linear luminance: sRGB, profiles, alpha over paper; and the art's range of greys. Door: {@link
 * greyground.art.colour.Luminance}.
 */
@NullMarked
package greyground.art.colour;

import org.jspecify.annotations.NullMarked;
