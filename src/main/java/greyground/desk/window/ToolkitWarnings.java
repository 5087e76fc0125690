package greyground.desk.window;

import java.lang.reflect.Field;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Spares printmakers two warnings that are meant for the makers of the window's toolkit: that it is found on the class path, and, from Java 24
 * on, that it keeps the edges of what it draws outside the heap. Neither changes what is drawn.
 */
final class ToolkitWarnings {
    /** Kept, since a log that nobody holds forgets its level. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private ToolkitWarnings() {}

    /** Before the toolkit starts. What it has to say of errors is still printed. */
    static void spare() {
        TOOLKIT.setLevel(Level.SEVERE);
        try {
            // Java's own note that it has warned of such memory, which it does once. Only an option on the command line
            // would do the same, and a jar can't give itself one.
            Field warned = Class.forName("sun.misc.Unsafe").getDeclaredField("memoryAccessWarned");
            warned.setAccessible(true);
            warned.setBoolean(null, true);
        } catch (ReflectiveOperationException | RuntimeException otherJava) {
            // Earlier ones don't warn; a later one may.
            return;
        }
    }
}
