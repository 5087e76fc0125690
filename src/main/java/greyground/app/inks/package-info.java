/**
 * The print of inks' test plates read back, and the inks that it teaches. Door: {@link greyground.app.inks.InkReadWork}.
 */
@NullMarked
package greyground.app.inks;

import org.jspecify.annotations.NullMarked;
