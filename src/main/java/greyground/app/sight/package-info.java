/**
 * What a person looks at, in words of no window: the stages of a plate, a rectangle of it, pixels. Doors: {@link
 * greyground.app.sight.Stage} and {@link greyground.app.sight.LivePicture}.
 */
@NullMarked
package greyground.app.sight;

import org.jspecify.annotations.NullMarked;
