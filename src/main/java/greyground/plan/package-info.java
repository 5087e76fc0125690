/**
 * The exposure and bite plan: each step of the plate with its numbers, their provenance and the cautions that belong to it. Key type:
 * {@link greyground.plan.ExposurePlan}. May import {@code quantity}, {@code workshop} and {@code plate}.
 */
@NullMarked
package greyground.plan;

import org.jspecify.annotations.NullMarked;
