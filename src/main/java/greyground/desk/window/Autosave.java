package greyground.desk.window;

import greyground.desk.model.BenchModel;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.animation.PauseTransition;
import javafx.util.Duration;

/** Keeps what is unsaved once nothing has changed for a moment. Used on the window's thread; it writes on a thread of its own. */
final class Autosave {
    /** Assumed: longer than the gap between two steps of a slider, shorter than a person waits before a power cut. */
    private static final Duration QUIET = Duration.millis(900);

    private final PauseTransition settled = new PauseTransition(QUIET);
    private final BenchModel model;
    private final Executor window;
    private final Consumer<String> trouble;
    private final Runnable first;

    /**
     * Keeps nothing yet.
     *
     * @param first is done before, on the window's thread
     */
    Autosave(BenchModel model, Executor window, Consumer<String> trouble, Runnable first) {
        this.first = first;
        this.model = model;
        this.window = window;
        this.trouble = trouble;
        settled.setOnFinished(quiet -> save());
    }

    void changed() {
        settled.playFromStart();
    }

    private void save() {
        first.run();
        Runnable saving = model.autosaving();
        Thread saver = new Thread(
                () -> {
                    saving.run();
                    String said = model.trouble();
                    if (!said.isEmpty()) {
                        window.execute(() -> trouble.accept(said));
                    }
                },
                "autosave");
        saver.setDaemon(false);
        saver.start();
    }

    void close() {
        settled.stop();
    }
}
