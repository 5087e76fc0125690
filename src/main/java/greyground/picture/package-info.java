/**
 * Pictures of a plate for people to look at: the print, the copper in relief, the resist, a loupe, a contact sheet of bites and
 * the four-quadrant tone diagram. {@link greyground.picture.Picture} is what all of them become; {@link
 * greyground.picture.Drawing} is lines, areas and words before they are pixels, SVG or a PDF page. Tones come from {@code
 * plate} and {@code tone}; nothing here computes what a plate does. Door: {@link greyground.picture.Picture}.
 */
@NullMarked
package greyground.picture;

import org.jspecify.annotations.NullMarked;
