/**
 * How things look: colours by daylight and safelight, plain controls, questions, small pictures and charts. Door: {@link
 * greyground.desk.look.Light}.
 */
@NullMarked
package greyground.desk.look;

import org.jspecify.annotations.NullMarked;
