/**
 * Job, workshop and art become curve, layout and films. Doors: {@link greyground.app.recipe.FilmRecipe} for the films of a
 * job, {@link greyground.app.recipe.PositiveWork} to make them into a file.
 */
@NullMarked
package greyground.app.recipe;

import org.jspecify.annotations.NullMarked;
