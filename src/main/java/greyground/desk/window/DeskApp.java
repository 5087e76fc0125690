package greyground.desk.window;

import greyground.app.print.PrintersAtHand;
import greyground.desk.look.Bell;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.film.job.Kind;
import java.io.File;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import javafx.application.Application;
import javafx.application.Platform;
import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.FileChooser;
import javafx.stage.Screen;
import javafx.stage.Stage;

/** The window as a program of its own. */
public final class DeskApp extends Application {
    private static final double WIDTH = 1400;
    private static final double HEIGHT = 900;

    /** Made by JavaFX. */
    public DeskApp() {}

    @Override
    public void start(Stage stage) {
        DeskServices services = new DeskServices(
                choosing(stage),
                DeskFolder.usual(),
                ProcessHandle.current().pid(),
                () -> LocalDate.now(ZoneId.systemDefault()),
                System::nanoTime,
                Platform::runLater,
                PrintersAtHand.ofTheSystem(),
                Bell::ring);
        DeskWindow desk = new DeskWindow(services);
        Rectangle2D room = Screen.getPrimary().getVisualBounds();
        stage.setScene(new Scene(desk.root(), Math.min(WIDTH, room.getWidth()), Math.min(HEIGHT, room.getHeight())));
        stage.setMinWidth(Math.min(DeskWindow.LEAST_WIDTH, room.getWidth()));
        stage.setMinHeight(Math.min(DeskWindow.LEAST_HEIGHT, room.getHeight()));
        stage.setTitle("Greyground");
        stage.setOnCloseRequest(closing -> {
            if (!desk.mayClose(stage::hide)) {
                closing.consume();
            }
        });
        stage.setOnHidden(hidden -> desk.closed());
        stage.show();
        List<String> named = getParameters().getRaw();
        desk.begin(named.isEmpty() ? Optional.empty() : Optional.of(Path.of(named.get(0))));
    }

    private static FileAsking choosing(Stage stage) {
        return new FileAsking() {
            private Optional<File> folder = Optional.empty();

            @Override
            public Optional<Path> open(String title, Kind kind) {
                return kept(chooser(title, kind).showOpenDialog(stage));
            }

            @Override
            public Optional<Path> save(String title, Kind kind, String suggested) {
                FileChooser chooser = chooser(title, kind);
                chooser.setInitialFileName(suggested);
                return kept(chooser.showSaveDialog(stage));
            }

            private FileChooser chooser(String title, Kind kind) {
                FileChooser chooser = new FileChooser();
                chooser.setTitle(title);
                chooser.getExtensionFilters()
                        .addAll(
                                new FileChooser.ExtensionFilter(kind.words(), kind.patterns()),
                                new FileChooser.ExtensionFilter("All files", "*"));
                folder.filter(File::isDirectory).ifPresent(chooser::setInitialDirectory);
                return chooser;
            }

            private Optional<Path> kept(@org.jspecify.annotations.Nullable File chosen) {
                if (chosen == null) {
                    return Optional.empty();
                }
                folder = Optional.ofNullable(chosen.getParentFile());
                return Optional.of(chosen.toPath());
            }
        };
    }
}
