/**
 * How the program touches a person's files: each written whole or not at all, opened with what is attached, changed by one
 * program at a time. Doors: {@link greyground.app.files.SafeFile} to write, {@link greyground.app.files.KeptFiles} to read,
 * {@link greyground.app.files.ShopFile} for the workshop.
 */
@NullMarked
package greyground.app.files;

import org.jspecify.annotations.NullMarked;
