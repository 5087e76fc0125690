/**
 * The film PDF with its plan pages and attachments, the film TIFF with the same bits, and the reading back of its own PDF.
 * Doors: {@link greyground.output.FilmDocument} (what goes in), {@link greyground.output.FilmPdf}, {@link
 * greyground.output.FilmTiff} and {@link greyground.output.FilmPdfReader}. Only this package knows what its file formats call
 * black.
 */
@NullMarked
package greyground.output;

import org.jspecify.annotations.NullMarked;
