/**
 * The whole window: puts the parts together, opens and saves, takes keys. Door: {@link greyground.desk.window.DeskWindow}.
 */
@NullMarked
package greyground.desk.window;

import org.jspecify.annotations.NullMarked;
