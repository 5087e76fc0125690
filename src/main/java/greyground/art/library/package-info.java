/**
 * The wall around the picture readers of a library: size before pixels, bounded memory and time, faults in words of our own. Door:
 * {@link greyground.art.library.LibraryReader}.
 */
@NullMarked
package greyground.art.library;

import org.jspecify.annotations.NullMarked;
