/**
 * Dust, hairs and scratches of a plane: those that stand out proposed, those that are wished healed from what lies around. Doors: {@link
 * greyground.art.spots.SpotSearch}, {@link greyground.art.spots.SpotHealing}.
 */
@NullMarked
package greyground.art.spots;

import org.jspecify.annotations.NullMarked;
