/**
 * Films of several plates that are printed over one another in register. Door: {@link greyground.app.plates.PlatesWork}.
 */
@NullMarked
package greyground.app.plates;

import org.jspecify.annotations.NullMarked;
