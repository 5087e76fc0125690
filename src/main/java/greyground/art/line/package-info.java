/**
 * Drawings: ink parted from paper, strokes measured, specks removed. Pure functions of a plane of luminance. Door: {@link
 * greyground.art.line.InkAndPaper}.
 */
@NullMarked
package greyground.art.line;

import org.jspecify.annotations.NullMarked;
