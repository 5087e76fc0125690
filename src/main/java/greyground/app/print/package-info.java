/**
 * Films handed to a printer of the system. Door: {@link greyground.app.print.FilmPrinting}.
 */
@NullMarked
package greyground.app.print;

import org.jspecify.annotations.NullMarked;
