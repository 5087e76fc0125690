/**
 * What a reading teaches: measured patches become a {@link greyground.fit.MeasuredResponse}, which a tone curve can use as it
 * uses the virtual plate's, and {@link greyground.fit.PlateLesson} finds the virtual plate's own numbers in it. Nothing here
 * reads a file or knows a workshop. Doors: those two.
 */
@NullMarked
package greyground.fit;

import org.jspecify.annotations.NullMarked;
