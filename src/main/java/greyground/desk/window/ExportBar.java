package greyground.desk.window;

import greyground.app.files.NamedFiles;
import greyground.app.recipe.PositiveOutcome;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.desk.model.FilmExport;
import greyground.desk.model.LongWork;
import greyground.desk.model.TimeLeft;
import java.nio.file.Path;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** Makes the film: asks where, shows how far it is and how long it still takes, and stops on demand. */
final class ExportBar extends HBox {
    private final DeskServices services;
    private final BenchModel model;
    private final DeskFiles files;
    private final Consumer<String> say;
    private final Label words = new Label();
    private final ProgressBar bar = new ProgressBar(0);
    private final Button stop = new Button("Stop");
    private final LongWork work;

    ExportBar(DeskServices services, BenchModel model, DeskFiles files, Consumer<String> say) {
        super(8);
        this.services = services;
        this.model = model;
        this.files = files;
        this.say = say;
        this.work = new LongWork("film", services.window());
        setAlignment(Pos.CENTER_RIGHT);
        bar.setPrefWidth(160);
        bar.setAccessibleText("Progress of the film");
        words.setMinWidth(Region.USE_PREF_SIZE);
        stop.setId("stop-film");
        stop.setAccessibleText("Stop making the film");
        stop.setMinWidth(Region.USE_PREF_SIZE);
        stop.setOnAction(pressed -> stop());
        getChildren().addAll(words, bar, stop);
        show(false);
    }

    private void show(boolean working) {
        setVisible(working);
        setManaged(working);
    }

    boolean isWorking() {
        return work.isRunning();
    }

    void refresh() {
        stop.setDisable(!isWorking());
    }

    /** Asks where the film goes, and makes it. */
    void ask() {
        if (isWorking()) {
            say.accept("a film is being made: wait for it, or stop it first");
            return;
        }
        model.state()
                .ifPresent(state -> services.files()
                        .save("Make the film", FileAsking.Kind.FILM, files.suggested(".pdf"))
                        .ifPresent(file -> make(state, file)));
    }

    private void make(BenchState state, Path file) {
        TimeLeft left = new TimeLeft(services.nanoTime());
        bar.setProgress(0);
        words.setText("Making the film");
        show(true);
        stop.setDisable(false);
        say.accept("");
        NamedFiles named = model.named();
        work.start(progress -> FilmExport.make(named, state, file, progress), new LongWork.Listener<PositiveOutcome>() {
            @Override
            public void progress(double done) {
                bar.setProgress(done);
                String guess = left.words(done);
                words.setText(guess.isEmpty() ? "Making the film" : "Making the film, " + guess);
            }

            @Override
            public void done(PositiveOutcome outcome) {
                show(false);
                if (!FilmExport.isTiff(file)) {
                    files.made(file);
                }
                say.accept("film written: " + file.getFileName() + ", sheet "
                        + outcome.findings().line("sheet") + "; print it at 100 %"
                        + (FilmExport.isTiff(file)
                                ? "; a TIFF carries neither plan nor job, so save the job too"
                                : ""));
            }

            @Override
            public void failed(String fault) {
                show(false);
                say.accept(fault);
            }

            @Override
            public void stopped() {
                show(false);
                say.accept("stopped; nothing was written");
            }
        });
    }

    void stop() {
        work.stop();
    }
}
