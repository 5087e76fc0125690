/**
 * What was computed once and may be wanted again: grains and responses, each a checked file in the user's cache. Doors: {@link
 * greyground.app.kept.GrainStore} and {@link greyground.app.kept.ResponseStore}.
 */
@NullMarked
package greyground.app.kept;

import org.jspecify.annotations.NullMarked;
