/**
 * Opens source art of any usual kind and decodes it to a {@link greyground.raster.GreyPlane} of linear luminance: profile,
 * alpha, orientation, resolution, page. Door: {@link greyground.art.Art}.
 */
@NullMarked
package greyground.art;

import org.jspecify.annotations.NullMarked;
