/**
 * The exposure and bite plan: each step of the plate with its numbers, their provenance and the cautions that belong to it.
 * Door: {@link greyground.plan.ExposurePlan}. {@link greyground.plan.BitePlan} and {@link greyground.plan.BiteAgain} answer for
 * one bite, {@link greyground.plan.BiteOrder} and {@link greyground.plan.ExposureOrder} put answers into words.
 */
@NullMarked
package greyground.plan;

import org.jspecify.annotations.NullMarked;
