/**
 * How to share the light of a photogravure plate between its screen and its image. Door: {@link
 * greyground.plate.split.ExposureSearch}.
 */
@NullMarked
package greyground.plate.split;

import org.jspecify.annotations.NullMarked;
