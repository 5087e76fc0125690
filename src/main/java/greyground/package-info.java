/**
 * The door: {@link greyground.Main} hands the command line to {@code cli}. May import {@code cli} and, once there is a
 * window, {@code desk}; nothing may import this package.
 */
@NullMarked
package greyground;

import org.jspecify.annotations.NullMarked;
