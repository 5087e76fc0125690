/**
 * A whole film looked through by the plate's limits: openings that stay shut, lands that vanish, open bite. Door: {@link
 * greyground.plate.inspect.FilmInspection}, which takes the rows of a film through {@link greyground.plate.inspect.FilmLimits}
 * to {@link greyground.plate.inspect.FilmFindings}.
 */
@NullMarked
package greyground.plate.inspect;

import org.jspecify.annotations.NullMarked;
