/** Places of a plane made lighter or darker by soft strokes, ellipses and gradients. Door: {@link greyground.art.burnish.LocalTones}. */
@NullMarked
package greyground.art.burnish;

import org.jspecify.annotations.NullMarked;
