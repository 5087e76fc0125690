/**
 * What stays the same between jobs: film printer, light, resist, exposure, developer, aquatint, bath, wipe, ink and paper, each
 * number with its provenance, and the plain file that keeps them. Door: {@link greyground.workshop.Workshop}.
 */
@NullMarked
package greyground.workshop;

import org.jspecify.annotations.NullMarked;
