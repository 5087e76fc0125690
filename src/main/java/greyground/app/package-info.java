/**
 * Everything the program can be asked, in one page. Door: {@link greyground.app.Greyground}.
 */
@NullMarked
package greyground.app;

import org.jspecify.annotations.NullMarked;
