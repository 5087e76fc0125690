/**
 * The command line, thin: {@link greyground.cli.CommandLine} turns arguments into a request to {@code app} and the answer into
 * text. Door: {@link greyground.cli.CommandLine}.
 */
@NullMarked
package greyground.cli;

import org.jspecify.annotations.NullMarked;
