/**
 * Test plates, printed and measured. {@link greyground.wedge.TestPlate} says what lies where, as pure layout in whole micrometres,
 * made from a {@link greyground.wedge.Recipe} or from the text of its own corner codes. What is measured on its print comes as
 * {@link greyground.wedge.MeasuredPatch}es and becomes a {@link greyground.wedge.MeasuredResponse}, which a tone curve can use as it
 * uses the virtual plate's; {@link greyground.wedge.PlateLesson} finds the virtual plate's own numbers in it. Nothing here reads a file
 * or knows a workshop. May import {@code quantity}, {@code tone}, {@code grain}, {@code raster} and {@code plate}.
 */
@NullMarked
package greyground.wedge;

import org.jspecify.annotations.NullMarked;
