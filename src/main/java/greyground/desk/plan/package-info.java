/**
 * The plan as a wall card, with clocks, notes and bite log. Door: {@link greyground.desk.plan.PlanView}.
 */
@NullMarked
package greyground.desk.plan;

import org.jspecify.annotations.NullMarked;
