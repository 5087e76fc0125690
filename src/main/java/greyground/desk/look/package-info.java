/**
 * How things look: colours by daylight and safelight, plain controls, questions, finished pictures, and the pen for what is drawn by
 * hand. Door: {@link greyground.desk.look.Controls}.
 */
@NullMarked
package greyground.desk.look;

import org.jspecify.annotations.NullMarked;
