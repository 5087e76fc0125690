/**
 * What was computed once and may be wanted again: grains, responses and samples of neighbourhoods, each a checked file in the user's cache. Doors: {@link
 * greyground.app.kept.GrainStore}, {@link greyground.app.kept.ResponseStore} and {@link
 * greyground.app.kept.NeighbourhoodStore}.
 */
@NullMarked
package greyground.app.kept;

import org.jspecify.annotations.NullMarked;
