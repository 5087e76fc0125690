/**
 * Rows, bands and planes of pixels: {@link greyground.raster.GreyPlane} holds decoded art
 * (in memory or in a spill file: {@link greyground.raster.PlaneStore}), {@link greyground.raster.Bands} makes
 * bands of film on all cores and hands them on in order. May import {@code quantity}.
 */
@NullMarked
package greyground.raster;

import org.jspecify.annotations.NullMarked;
