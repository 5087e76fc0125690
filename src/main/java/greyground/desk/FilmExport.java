package greyground.desk;

import greyground.app.PositiveOutcome;
import greyground.app.PositiveWork;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;

/** Makes a film and writes it, on a thread of its own; can be stopped, and then nothing is written. */
final class FilmExport {
    private final Executor window;
    private volatile boolean stopped;
    private volatile boolean running = true;

    /** Hears how it goes, on the window's thread. */
    interface Listener {
        void progress(double done);

        void written(Path film, PositiveOutcome outcome);

        void failed(String words);

        void stopped();
    }

    FilmExport(Executor window) {
        this.window = window;
    }

    void start(BenchState state, Path film, Listener listener) {
        Thread thread = new Thread(() -> run(state, film, listener), "film");
        thread.setDaemon(true);
        thread.start();
    }

    /** Stops soon; told to the listener once it has. */
    void stop() {
        stopped = true;
    }

    boolean isRunning() {
        return running;
    }

    private void run(BenchState state, Path film, Listener listener) {
        Runnable news;
        try {
            PositiveOutcome outcome = PositiveWork.open(state.art())
                    .prepare(state.job(), state.workshop(), film, Optional.empty(), done -> {
                        if (stopped) {
                            throw new CancellationException("stopped");
                        }
                        window.execute(() -> listener.progress(done));
                    });
            news = () -> listener.written(film, outcome);
        } catch (CancellationException cancelled) {
            news = listener::stopped;
        } catch (Refusal refused) {
            news = () -> listener.failed(String.valueOf(refused.getMessage()));
        } catch (OutOfMemoryError full) {
            news = () -> listener.failed("there is not enough memory for this film: give Java more (-Xmx2g)");
        } catch (Exception unforeseen) {
            news = () -> listener.failed(
                    "an unforeseen fault, " + unforeseen.getClass().getSimpleName() + "; no film was written");
        }
        running = false;
        window.execute(news);
    }
}
