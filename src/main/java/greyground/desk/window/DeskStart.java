package greyground.desk.window;

import greyground.quantity.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import javafx.application.Application;

/** Opens the window and returns when it is closed. */
public final class DeskStart {
    private DeskStart() {}

    /** Whether there is a screen to open a window on, as far as can be told beforehand. */
    public static boolean hasScreen() {
        boolean unix =
                !System.getProperty("os.name", "").toLowerCase(Locale.ROOT).matches("(windows|mac).*");
        return !unix || System.getenv("DISPLAY") != null || System.getenv("WAYLAND_DISPLAY") != null;
    }

    /**
     * Opens the window.
     *
     * @param file a picture, job or film to begin with
     * @throws Refusal if the file is not there, or no window can be opened
     */
    public static void open(Optional<Path> file) {
        if (file.isPresent() && !Files.isRegularFile(file.get())) {
            throw Refusal.failure("there is no file " + file.get() + ": check the name");
        }
        if (!hasScreen()) {
            throw Refusal.failure("there is no screen to open a window on: use greyground positive and proof instead");
        }
        // Pictures are drawn in memory alone; a second toolkit must not reach for the screen.
        System.setProperty("java.awt.headless", "true");
        try {
            ToolkitWarnings.spare();
            Application.launch(
                    DeskApp.class,
                    file.map(Path::toString).map(name -> new String[] {name}).orElse(new String[0]));
        } catch (UnsupportedOperationException | IllegalStateException | LinkageError noWindow) {
            throw Refusal.failure(
                    "no window can be opened here: on Linux the packages libgtk-3-0 and libxtst6 are needed", noWindow);
        }
    }
}
