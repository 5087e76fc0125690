/**
 * The exposure and bite plan: each step of the plate with its numbers, their provenance and the cautions that belong to it. Key type:
 * {@link greyground.plan.ExposurePlan}. {@link greyground.plan.BitePlan} and {@link greyground.plan.BiteAgain} answer for one bite,
 * {@link greyground.plan.BiteOrder} and {@link greyground.plan.ExposureOrder} put answers into words. May import {@code quantity}, {@code workshop} and {@code plate}.
 */
@NullMarked
package greyground.plan;

import org.jspecify.annotations.NullMarked;
