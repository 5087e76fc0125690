/**
 * The film PDF with its plan pages and attachments, the film TIFF with the same bits, and the reading back of its own PDF. Key
 * types: {@link greyground.output.FilmDocument} (what goes in), {@link greyground.output.FilmPdf}, {@link
 * greyground.output.FilmTiff} and {@link greyground.output.FilmPdfReader}. Only this package knows what its file formats call
 * black. May import {@code film} and everything that {@code film} may import.
 */
@NullMarked
package greyground.output;

import org.jspecify.annotations.NullMarked;
