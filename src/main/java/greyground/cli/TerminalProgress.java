package greyground.cli;

import java.io.PrintStream;
import java.util.Locale;

/**
 * A line that tells how far the work is, rewritten in place. Silent where nobody watches: without a terminal nothing is
 * printed, so logs stay clean.
 */
final class TerminalProgress {
    private static final long PAUSE_NANOS = 100_000_000L;

    private final PrintStream err;
    // Newer Javas give a console even without a terminal; a pipe then gets a few more bytes on its error stream.
    @SuppressWarnings("SystemConsoleNull")
    private final boolean watched = System.console() != null;

    private long lastNanos;

    TerminalProgress(PrintStream err) {
        this.err = err;
    }

    void show(double fraction) {
        long now = System.nanoTime();
        if (watched && now - lastNanos > PAUSE_NANOS) {
            lastNanos = now;
            err.printf(Locale.ROOT, "\r%3.0f %%  Ctrl-C stops", fraction * 100);
            err.flush();
        }
    }

    void clear() {
        if (watched) {
            err.print("\r                       \r");
            err.flush();
        }
    }
}
