/**
 * Test plates: what a printed plate that was measured says about its shop. {@link greyground.wedge.MeasuredPatch}es become a
 * {@link greyground.wedge.MeasuredResponse}, which the tone curve uses as it uses the virtual plate's; and
 * {@link greyground.wedge.PlateFit} finds the virtual plate's own numbers in it. Nothing here reads a file or knows a workshop.
 * May import {@code quantity}, {@code tone}, {@code grain}, {@code raster} and {@code plate}.
 */
@NullMarked
package greyground.wedge;

import org.jspecify.annotations.NullMarked;
