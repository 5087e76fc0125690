package greyground.desk;

import greyground.app.PositiveOutcome;
import greyground.app.PositiveWork;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Executor;

/** Makes a film and writes it, on a thread of its own; can be stopped, and then nothing is written. */
final class FilmExport {
    private final FilmTask work;

    /** Hears how it goes, on the window's thread. */
    interface Listener extends FilmTask.Listener {
        void written(Path film, PositiveOutcome outcome);
    }

    FilmExport(Executor window) {
        this.work = new FilmTask("film", window);
    }

    /** Writes a TIFF where the file is named so, else a PDF. */
    void start(BenchState state, Path film, Listener listener) {
        work.start(
                progress -> {
                    PositiveWork positive = PositiveWork.open(state.art());
                    PositiveOutcome outcome = isTiff(film)
                            ? positive.prepareTiff(state.job(), state.workshop(), film, progress::accept)
                            : positive.prepare(state.job(), state.workshop(), film, Optional.empty(), progress::accept);
                    return () -> listener.written(film, outcome);
                },
                listener);
    }

    static boolean isTiff(Path film) {
        return String.valueOf(film.getFileName()).toLowerCase(Locale.ROOT).matches(".*\\.tiff?");
    }

    /** Stops soon; told to the listener once it has. */
    void stop() {
        work.stop();
    }

    boolean isRunning() {
        return work.isRunning();
    }
}
