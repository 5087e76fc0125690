/**
 * The inks of a set of plates, as a printmaker knows them and as they lie on paper, and their file. Door: {@link greyground.ink.InkSet}.
 */
@NullMarked
package greyground.ink;

import org.jspecify.annotations.NullMarked;
