/**
 * PNG and the less usual kinds, a class or two each, named after the kind. Door: {@link greyground.art.page.ArtFormat}, which they
 * share.
 */
@NullMarked
package greyground.art.kind;

import org.jspecify.annotations.NullMarked;
