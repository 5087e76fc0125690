/**
 * A test plate's proof read back, and what it teaches a workshop. Door: {@link greyground.app.teach.ReadWork}.
 */
@NullMarked
package greyground.app.teach;

import org.jspecify.annotations.NullMarked;
