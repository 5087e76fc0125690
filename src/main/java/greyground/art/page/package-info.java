/**
 * What every kind of picture file gives: bytes read within bounds, a page with its size, resolution and samples, rows on
 * demand. Door: {@link greyground.art.page.Page}.
 */
@NullMarked
package greyground.art.page;

import org.jspecify.annotations.NullMarked;
