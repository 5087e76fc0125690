/** What the printmaker's hand does to a plane pixel by pixel with its surroundings, band by band. Door: {@link greyground.art.touch.Touch}. */
@NullMarked
package greyground.art.touch;

import org.jspecify.annotations.NullMarked;
