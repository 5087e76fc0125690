/**
 * Art that is itself a print: its screens of dots are found, and each dot is spread over its own cell. Door: {@link
 * greyground.art.printed.ScreenSearch}.
 */
@NullMarked
package greyground.art.printed;

import org.jspecify.annotations.NullMarked;
