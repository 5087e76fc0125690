/**
 * JPEG, by itself and inside other files. Door: {@link greyground.art.jpeg.JpegFormat}.
 */
@NullMarked
package greyground.art.jpeg;

import org.jspecify.annotations.NullMarked;
