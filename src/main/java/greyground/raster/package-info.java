/**
 * Rows, bands and planes of pixels: {@link greyground.raster.GreyPlane} holds decoded art (in memory or in a spill file: {@link
 * greyground.raster.PlaneStore}), {@link greyground.raster.Bands} makes bands of film on all cores and hands them on in order;
 * {@link greyground.raster.BitPlane} holds bits of film, on which {@link greyground.raster.DiscOpening} and {@link
 * greyground.raster.DiscReach} work and {@link greyground.raster.Regions} counts. Doors: {@link greyground.raster.GreyPlane}
 * and {@link greyground.raster.Bands}.
 */
@NullMarked
package greyground.raster;

import org.jspecify.annotations.NullMarked;
