/**
 * WebP, by itself and inside TIFF, around a library's decoder. Door: {@link greyground.art.webp.WebpFormat}.
 */
@NullMarked
package greyground.art.webp;

import org.jspecify.annotations.NullMarked;
