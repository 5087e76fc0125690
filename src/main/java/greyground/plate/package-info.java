/**
 * The virtual plate: light, resist, ground, bath, wipe and ink, and the response to coverage they give together. Key types:
 * {@link greyground.plate.PlateProcess}. May import {@code quantity}, {@code tone} and {@code raster}.
 */
@NullMarked
package greyground.plate;

import org.jspecify.annotations.NullMarked;
