/**
 * Art, curve and grain composed into rows of film, and blacks made solid where the plate holds them. Doors: {@link
 * greyground.film.compose.FilmComposer}, {@link greyground.film.compose.Mend}.
 */
@NullMarked
package greyground.film.compose;

import org.jspecify.annotations.NullMarked;
