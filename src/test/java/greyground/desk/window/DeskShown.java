package greyground.desk.window;

import java.util.Optional;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.stage.Window;

/** Opens the window as the command does, and ends as soon as its first frames are drawn. */
final class DeskShown {
    private DeskShown() {}

    /** Ends at the third frame that is drawn: then the first is seen. */
    private static final AnimationTimer FRAMES = new AnimationTimer() {
        private int drawn;

        @Override
        public void handle(long now) {
            if (++drawn == 3) {
                Runtime.getRuntime().halt(0);
            }
        }
    };

    public static void main(String[] arguments) {
        Thread watcher = new Thread(
                () -> {
                    while (true) {
                        try {
                            Thread.sleep(5);
                            Platform.runLater(() -> {
                                if (Window.getWindows().stream().anyMatch(Window::isShowing)) {
                                    FRAMES.start();
                                }
                            });
                        } catch (IllegalStateException notYet) {
                            continue;
                        } catch (InterruptedException ended) {
                            return;
                        }
                    }
                },
                "watcher");
        watcher.setDaemon(true);
        watcher.start();
        DeskStart.open(Optional.empty());
    }
}
