/**
 * A plate shown before it is bitten: pictures and figures of its print, copper and resist. Door: {@link
 * greyground.app.proof.ProofWork}.
 */
@NullMarked
package greyground.app.proof;

import org.jspecify.annotations.NullMarked;
