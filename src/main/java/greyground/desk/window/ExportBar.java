package greyground.desk.window;

import greyground.app.files.NamedFiles;
import greyground.desk.look.WorkBar;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.desk.model.FilmExport;
import greyground.desk.model.LongWork;
import greyground.desk.model.Messages;
import greyground.desk.model.TimeLeft;
import java.nio.file.Path;

/** Makes the film: asks where, shows how far it is and how long it still takes, and stops on demand. */
final class ExportBar {
    private static final String MAKING = "Making the film";

    final WorkBar bar = new WorkBar("making the film", "stop-film", this::stop);
    private final DeskServices services;
    private final BenchModel model;
    private final DeskFiles files;
    private final Messages messages;
    private final LongWork work;

    ExportBar(DeskServices services, BenchModel model, DeskFiles files, Messages messages) {
        this.services = services;
        this.model = model;
        this.files = files;
        this.messages = messages;
        this.work = new LongWork("film", services.window());
    }

    boolean isWorking() {
        return work.isRunning();
    }

    /** Asks where the film goes, and makes it. */
    void ask() {
        if (isWorking()) {
            messages.cant("a film is being made: wait for it, or stop it first");
            return;
        }
        model.state()
                .ifPresent(state -> services.files()
                        .save("Make the film", FileAsking.Kind.FILM, files.suggested(".pdf"))
                        .ifPresent(file -> make(state, file)));
    }

    private void make(BenchState state, Path file) {
        TimeLeft left = new TimeLeft(services.nanoTime());
        bar.progress(0, MAKING);
        bar.show(true);
        messages.clear();
        NamedFiles named = model.named();
        work.start(
                progress -> FilmExport.make(named, state, file, progress),
                new LongWork.News<>(
                        done -> {
                            String guess = left.words(done);
                            bar.progress(done, guess.isEmpty() ? MAKING : MAKING + ", " + guess);
                        },
                        outcome -> {
                            boolean tiff = FilmExport.isTiff(file);
                            if (!tiff) {
                                files.made(file);
                            }
                            bar.show(false);
                            messages.done("film written: " + file.getFileName() + ", sheet "
                                    + outcome.findings().line("sheet") + "; print it at 100 %"
                                    + (tiff ? "; a TIFF carries neither plan nor job, so save the job too" : ""));
                        },
                        fault -> {
                            bar.show(false);
                            messages.cant(fault);
                        },
                        () -> {
                            bar.show(false);
                            messages.done("stopped; nothing was written");
                        }));
    }

    void stop() {
        work.stop();
    }

    /** Stops, and waits for the end. */
    void close() {
        work.close();
    }
}
