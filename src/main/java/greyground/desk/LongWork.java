package greyground.desk;

import greyground.quantity.Refusal;
import java.util.concurrent.CancellationException;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;

/**
 * One long piece of work at a time, on a thread of its own. News of it comes on the window's thread; once it is stopped no news
 * comes any more, though the thread may take a moment to end.
 */
final class LongWork {
    private final Executor window;
    private volatile int number;
    private volatile boolean running;

    LongWork(Executor window) {
        this.window = window;
    }

    /**
     * What is to be done.
     *
     * @param <T> what comes of it
     */
    interface Work<T> {
        /** Tells {@code watch} how far it is, 0 to 1, which throws once the work is no longer wanted. */
        T run(DoubleConsumer watch) throws Exception;
    }

    /**
     * Begins; what ran before is stopped.
     *
     * @param progress hears how far it is
     * @param done hears what came of it
     * @param failed hears why nothing came of it, in one line
     */
    <T> void start(String name, Work<T> work, DoubleConsumer progress, Consumer<T> done, Consumer<String> failed) {
        int own = number + 1;
        number = own;
        running = true;
        Thread thread = new Thread(
                () -> {
                    Runnable news = run(own, work, progress, done, failed);
                    window.execute(() -> {
                        if (own == number) {
                            running = false;
                            news.run();
                        }
                    });
                },
                name);
        thread.setDaemon(true);
        thread.start();
    }

    private <T> Runnable run(
            int own, Work<T> work, DoubleConsumer progress, Consumer<T> done, Consumer<String> failed) {
        try {
            T result = work.run(fraction -> {
                if (own != number) {
                    throw new CancellationException("stopped");
                }
                window.execute(() -> {
                    if (own == number) {
                        progress.accept(fraction);
                    }
                });
            });
            return () -> done.accept(result);
        } catch (CancellationException stopped) {
            return () -> {};
        } catch (Refusal refused) {
            return () -> failed.accept(String.valueOf(refused.getMessage()));
        } catch (OutOfMemoryError full) {
            return () -> failed.accept("there is not enough memory for this: give Java more (-Xmx2g)");
        } catch (Exception unforeseen) {
            return () -> failed.accept("an unforeseen fault, "
                    + unforeseen.getClass().getSimpleName() + "; nothing was changed, please report it");
        }
    }

    /** Stops it; no news comes after this. */
    void stop() {
        int next = number + 1;
        number = next;
        running = false;
    }

    boolean isRunning() {
        return running;
    }
}
