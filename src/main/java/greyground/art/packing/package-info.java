/**
 * Unpacking of bytes that need no other part of a picture: LZW, PackBits, deflate. Door: {@link
 * greyground.art.packing.Unpacked}.
 */
@NullMarked
package greyground.art.packing;

import org.jspecify.annotations.NullMarked;
