/**
 * What stays the same between jobs: film printer, light, resist, bath, wipe, ink and paper, each number with its provenance. Key
 * type: {@link greyground.workshop.Figure}. May import {@code quantity}, {@code tone}, {@code grain}, {@code raster} and {@code plate}.
 */
@NullMarked
package greyground.workshop;

import org.jspecify.annotations.NullMarked;
