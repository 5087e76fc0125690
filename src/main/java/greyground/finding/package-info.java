/**
 * What an outcome says, once: keys, words and figures, which a terminal lays out in lines and columns, JSON maps, and a window lists.
 * Door: {@link greyground.finding.Findings}.
 */
@NullMarked
package greyground.finding;

import org.jspecify.annotations.NullMarked;
