/**
 * The command line, thin: {@link greyground.cli.CommandLine} turns arguments into a request to {@code app} and the answer into text.
 * May import {@code app}, {@code film}, {@code workshop}, {@code plan} and {@code quantity}.
 */
@NullMarked
package greyground.cli;

import org.jspecify.annotations.NullMarked;
