package greyground.desk.window;

import greyground.app.files.NamedFiles;
import greyground.desk.look.WorkBar;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.desk.model.FilmExport;
import greyground.desk.model.LongWork;
import greyground.desk.model.Messages;
import greyground.desk.model.Messages.Answer;
import greyground.desk.model.Place;
import greyground.desk.model.TimeLeft;
import java.nio.file.Path;
import java.util.Optional;

/** Makes the film: asks where, shows how far it is and how long it still takes, and stops on demand. */
final class ExportBar {
    private static final String MAKING = "Making the film";

    final WorkBar bar = new WorkBar("making the film", "stop-film", this::stop);
    private final DeskServices services;
    private final DeskWindow desk;
    private final Messages messages;
    private final LongWork work;

    ExportBar(DeskServices services, DeskWindow desk) {
        this.services = services;
        this.desk = desk;
        this.messages = desk.messages;
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
        Optional<WarningsView.Line> stop = desk.warnings.stopping();
        if (stop.isPresent()) {
            messages.cant(
                    stop.get().words(),
                    new Answer("Correct it", () -> stop.get().setting().ifPresent(desk::set)));
            return;
        }
        desk.model
                .state()
                .ifPresent(state -> services.files()
                        .save("Make the film", FileAsking.Kind.FILM, desk.files.suggested(".pdf"))
                        .ifPresent(file -> make(state, file)));
    }

    private void make(BenchState state, Path file) {
        TimeLeft left = new TimeLeft(services.nanoTime());
        bar.progress(0, MAKING);
        bar.show(true);
        messages.clear();
        NamedFiles named = desk.model.named();
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
                                desk.files.made(file);
                            }
                            bar.show(false);
                            made(file, tiff, outcome.findings().line("sheet"));
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

    /** It is made: where, how large, and what comes next. */
    private void made(Path file, boolean tiff, String sheet) {
        Path folder = Optional.ofNullable(file.toAbsolutePath().getParent()).orElse(file);
        String words = "film made: " + file.getFileName() + " in " + folder + ", sheet " + sheet
                + "; print it at 100 % and measure both 100 mm rulers"
                + (tiff ? "; a TIFF carries neither plan nor job, so save the job too" : "");
        messages.done(
                words,
                new Answer("Open folder", () -> services.showFolder().accept(folder)),
                new Answer("Print it", desk::printFilm),
                new Answer("Plan", () -> desk.go(Place.PLAN)));
    }

    void stop() {
        work.stop();
    }

    /** Stops, and waits for the end. */
    void close() {
        work.close();
    }
}
