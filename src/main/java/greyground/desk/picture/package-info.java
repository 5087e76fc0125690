/**
 * The picture on the bench, its rulers, marks, loupe, sheet and tone diagram. Door: {@link
 * greyground.desk.picture.PictureView}.
 */
@NullMarked
package greyground.desk.picture;

import org.jspecify.annotations.NullMarked;
