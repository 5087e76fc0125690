/**
 * What stays the same between jobs: film printer, light, resist, exposure, developer, aquatint, bath, wipe, ink and paper, each number
 * with its provenance, and the plain file that keeps them. Key type: {@link greyground.workshop.Workshop}. May import {@code quantity},
 * {@code tone}, {@code grain}, {@code raster}, {@code plate} and {@code wedge}.
 */
@NullMarked
package greyground.workshop;

import org.jspecify.annotations.NullMarked;
