/**
 * Pages that are laid over whatever is seen, one at a time: keys, what the program is made with, preferences, files. Door:
 * {@link greyground.desk.page.LaidPages}.
 */
@NullMarked
package greyground.desk.page;

import org.jspecify.annotations.NullMarked;
