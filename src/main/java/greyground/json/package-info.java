/**
 * Plain JSON text with its refusals in words, fields read in any order, and unknown fields kept. Door: {@link
 * greyground.json.JsonText}.
 */
@NullMarked
package greyground.json;

import org.jspecify.annotations.NullMarked;
