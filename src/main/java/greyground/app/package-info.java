/**
 * Use cases: prepare a positive, proof, plan, reopen; progress, cancel, and files that are whole or not there. The only package
 * that touches the user's files. Key types: {@link greyground.app.SafeFile} and one class per use case. May import every
 * package but {@code cli} and {@code desk}.
 */
@NullMarked
package greyground.app;

import org.jspecify.annotations.NullMarked;
