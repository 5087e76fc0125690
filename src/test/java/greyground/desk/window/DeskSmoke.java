package greyground.desk.window;

import java.nio.file.Path;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.stage.Window;

/** Opens the window as the program does, waits until it shows the picture named, and says what it saw. */
final class DeskSmoke {
    private DeskSmoke() {}

    public static void main(String[] arguments) throws Exception {
        Thread watcher = new Thread(DeskSmoke::watch, "watcher");
        watcher.setDaemon(true);
        watcher.start();
        DeskStart.open(Optional.of(Path.of(arguments[0])));
        System.out.println("closed");
        System.exit(0);
    }

    private static void watch() {
        try {
            for (int i = 0; i < 900; i++) {
                Thread.sleep(100);
                lookSoon();
            }
        } catch (InterruptedException ended) {
            return;
        }
    }

    private static void lookSoon() {
        try {
            Platform.runLater(DeskSmoke::look);
        } catch (IllegalStateException notYet) {
            // On a busy machine the window's own thread takes a while to begin.
            return;
        }
    }

    private static void look() {
        for (Window window : Window.getWindows()) {
            boolean pictures = window.getScene().getRoot().lookupAll(".image-view").stream()
                    .map(node -> ((ImageView) node).getImage())
                    .anyMatch(DeskSmoke::isSeen);
            if (window.isShowing() && pictures) {
                System.out.println("shown " + (int) window.getWidth() + " x " + (int) window.getHeight());
                window.hide();
                return;
            }
        }
    }

    private static boolean isSeen(Image image) {
        return image != null && image.getWidth() > 1;
    }
}
