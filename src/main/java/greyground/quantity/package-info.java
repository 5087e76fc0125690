/**
 * Lengths, sizes, offsets, resolutions, rulings, densities, angles, temperatures and durations: records with their units in
 * their names, the parsing of what a person types ("200x250mm", "2:30"), and {@link greyground.quantity.Refusal}, the one way
 * to say no. Doors: its records, and {@link greyground.quantity.Refusal}.
 */
@NullMarked
package greyground.quantity;

import org.jspecify.annotations.NullMarked;
