package greyground.desk;

import greyground.quantity.Refusal;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.DoubleConsumer;

/** Work on a thread of its own that tells how far it is and can be stopped; done once. */
final class FilmTask {
    private final String name;
    private final Executor window;
    private volatile boolean stopped;
    private volatile boolean running = true;

    /** The work; gives back the news of its success, to be told on the window's thread. */
    @FunctionalInterface
    interface Work {
        Runnable run(DoubleConsumer progress) throws Exception;
    }

    /** Hears how it goes, on the window's thread. */
    interface Listener {
        void progress(double done);

        void failed(String words);

        void stopped();
    }

    FilmTask(String name, Executor window) {
        this.name = name;
        this.window = window;
    }

    void start(Work work, Listener listener) {
        Thread thread = new Thread(() -> run(work, listener), name);
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

    private void run(Work work, Listener listener) {
        Runnable news;
        try {
            news = work.run(done -> {
                if (stopped) {
                    throw new CancellationException("stopped");
                }
                window.execute(() -> listener.progress(done));
            });
        } catch (CancellationException cancelled) {
            news = listener::stopped;
        } catch (Refusal refused) {
            news = () -> listener.failed(String.valueOf(refused.getMessage()));
        } catch (OutOfMemoryError full) {
            news = () -> listener.failed("there is not enough memory for this " + name + ": give Java more (-Xmx2g)");
        } catch (Exception unforeseen) {
            news = () -> listener.failed("an unforeseen fault, "
                    + unforeseen.getClass().getSimpleName() + "; the " + name + " was not made");
        }
        running = false;
        window.execute(news);
    }
}
