/**
 * TIFF. Door: {@link greyground.art.tiff.TiffFormat}.
 */
@NullMarked
package greyground.art.tiff;

import org.jspecify.annotations.NullMarked;
