/**
 * What a person asks about a plate at the bench: its plan, a bite to a depth or tone, a second bite, a bite log, the two
 * exposures of photogravure. Door: {@link greyground.app.bite.BenchAdvice}.
 */
@NullMarked
package greyground.app.bite;

import org.jspecify.annotations.NullMarked;
