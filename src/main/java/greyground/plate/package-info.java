/**
 * The virtual plate: light, resist, ground, bath, wipe and ink, each a model of its own in micrometres, and the response to
 * coverage they give together. Door: {@link
 * greyground.plate.VirtualPlate}.
 *
 * <p>{@link greyground.plate.VirtualPlate} takes a {@link greyground.plate.FilmPatch} through {@link
 * greyground.plate.PlateConditions} to {@link greyground.plate.PlateStates}; {@link greyground.plate.VirtualResponse} does so
 * at many coverages. Nothing here knows where a figure came from or what made the film.
 *
 * <p>To change how a step behaves go to its record: {@link greyground.plate.Exposure}, {@link greyground.plate.Resist}, {@link
 * greyground.plate.SprayedGround}, {@link greyground.plate.Bath}, {@link greyground.plate.Wipe}, {@link greyground.plate.Ink},
 * {@link greyground.plate.Paper}. All distances and wiping rest on one algorithm, {@code LineEnvelope}.
 */
@NullMarked
package greyground.plate;

import org.jspecify.annotations.NullMarked;
