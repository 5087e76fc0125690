/**
 * The job record and the film sheet: placing, marks, ruler, wedge strip, ink side; composes art, curve and grain into rows of
 * film. Key types: {@link greyground.film.Sheet} (where everything lies) and {@link greyground.film.FilmRows} (the film
 * itself, band by band). {@link greyground.film.Mend} makes blacks solid where the plate holds them. May import every package but {@code output}, {@code app}, {@code cli} and {@code desk}.
 */
@NullMarked
package greyground.film;

import org.jspecify.annotations.NullMarked;
