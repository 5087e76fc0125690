/**
 * Where everything lies on a film sheet: plate, marks, rulers, wedge strip, legends, tiles. Doors: {@link
 * greyground.film.sheet.SheetLayout}, {@link greyground.film.sheet.Sheet}; a film's rows, band by band, are {@link
 * greyground.film.sheet.FilmRows}.
 */
@NullMarked
package greyground.film.sheet;

import org.jspecify.annotations.NullMarked;
