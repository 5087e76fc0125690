/**
 * The window: five stations of one plate, the settings of each, the loupe, the tone diagram and the plan as a wall card. What can be
 * decided without a window lives in small models that know nothing of it: {@link greyground.desk.BenchModel} is the key type, its
 * {@link greyground.desk.Setting}s, {@link greyground.desk.Viewport} and the rest beside it; a test keeps JavaFX out of them.
 * May import {@code app}, {@code film}, {@code workshop}, {@code plan} and {@code quantity}.
 */
@NullMarked
package greyground.desk;

import org.jspecify.annotations.NullMarked;
