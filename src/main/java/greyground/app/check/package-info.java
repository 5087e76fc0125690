/**
 * Films looked through before any copper is spent: what the plate won't keep, where, and which assumed figures matter. Door:
 * {@link greyground.app.check.FilmChecks}.
 */
@NullMarked
package greyground.app.check;

import org.jspecify.annotations.NullMarked;
