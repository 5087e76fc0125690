/**
 * Films of several plates on one sheet of film. Door: {@link greyground.app.gather.GatherWork}.
 */
@NullMarked
package greyground.app.gather;

import org.jspecify.annotations.NullMarked;
