/**
 * Opens source art of any usual kind and decodes it to a {@link greyground.raster.GreyPlane} of linear luminance: profile, alpha,
 * orientation, resolution, page. Key type: {@link greyground.art.Art}. May import {@code quantity} and {@code raster}.
 */
@NullMarked
package greyground.art;

import org.jspecify.annotations.NullMarked;
