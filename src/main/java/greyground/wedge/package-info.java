/**
 * Test plates: what lies where on them, as pure layout in whole micrometres, and the corner codes by which a plate says which it is.
 * The key type is {@link greyground.wedge.TestPlate}, made from a {@link greyground.wedge.Recipe} or from a code's text alone.
 * May import {@code quantity}, {@code tone}, {@code grain}, {@code raster} and {@code plate}.
 */
@NullMarked
package greyground.wedge;

import org.jspecify.annotations.NullMarked;
