package greyground.desk.window;

import greyground.desk.look.WorkBar;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;

/** How far a large picture is opened, and a way to stop; what opens at once never shows it. */
final class OpeningBar {
    private static final long PATIENCE_NANOS = TimeUnit.MILLISECONDS.toNanos(400);

    final WorkBar bar;
    private final LongSupplier nanoTime;
    private long began;
    private boolean opening;

    OpeningBar(LongSupplier nanoTime, Runnable stop) {
        this.nanoTime = nanoTime;
        this.bar = new WorkBar("opening the picture", "stop-opening", stop);
    }

    /**
     * Hears how far it is.
     *
     * @param done 0 to 1; 1 is the end, however it came
     */
    void progress(double done) {
        if (!opening) {
            began = nanoTime.getAsLong();
        }
        opening = done < 1;
        bar.progress(done, "Opening the picture");
        bar.show(opening && nanoTime.getAsLong() - began > PATIENCE_NANOS);
    }
}
