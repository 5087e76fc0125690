/**
 * The virtual plate: light, resist, ground, bath, wipe and ink, each a model of its own in micrometres, and the response to
 * coverage they give together; and the inspection of a whole film by the same models.
 *
 * <p>{@link greyground.plate.VirtualPlate} takes a {@link greyground.plate.FilmPatch} through
 * {@link greyground.plate.PlateConditions} to {@link greyground.plate.PlateStates};
 * {@link greyground.plate.VirtualResponse} does so at many coverages, {@link greyground.plate.ExposureSearch} at many splits of
 * two exposures. {@link greyground.plate.FilmInspection} takes the rows of a film through {@link greyground.plate.FilmLimits} to
 * {@link greyground.plate.FilmFindings}. Nothing here knows where a figure came from or what made the film. May import
 * {@code quantity}, {@code tone} and {@code raster}.
 *
 * <p>To change how a step behaves go to its record: {@link greyground.plate.Exposure}, {@link greyground.plate.Resist},
 * {@link greyground.plate.SprayedGround}, {@link greyground.plate.Bath}, {@link greyground.plate.Wipe},
 * {@link greyground.plate.Ink}, {@link greyground.plate.Paper}. All distances and wiping rest on one algorithm,
 * {@code LineEnvelope}.
 */
@NullMarked
package greyground.plate;

import org.jspecify.annotations.NullMarked;
