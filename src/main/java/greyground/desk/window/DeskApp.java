package greyground.desk.window;

import greyground.app.print.PrintersAtHand;
import greyground.desk.look.Bell;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskHabits;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.film.job.Kind;
import java.io.File;
import java.nio.file.Path;
import java.time.InstantSource;
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
    /** Of the screen's width and height, where the window was never moved. */
    private static final double SHARE = 0.9;

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
                InstantSource.system(),
                Platform::runLater,
                PrintersAtHand.ofTheSystem(),
                Bell::ring,
                folder -> getHostServices().showDocument(folder.toUri().toString()));
        DeskWindow desk = new DeskWindow(services);
        stage.setScene(new Scene(desk.root()));
        place(stage, desk.habits);
        stage.setTitle("Greyground");
        stage.setOnCloseRequest(closing -> {
            if (!desk.mayClose(stage::hide)) {
                closing.consume();
            }
        });
        stage.setOnHiding(hiding -> desk.habits.keep(new DeskHabits.Frame(
                stage.getX(), stage.getY(), stage.getWidth(), stage.getHeight(), stage.isMaximized())));
        stage.setOnHidden(hidden -> desk.closed());
        stage.show();
        List<String> named = getParameters().getRaw();
        desk.begin(named.isEmpty() ? Optional.empty() : Optional.of(Path.of(named.get(0))));
    }

    /** Where it was left, if that is on a screen; else a good share of the first screen. */
    private static void place(Stage stage, DeskHabits habits) {
        Rectangle2D room = Screen.getPrimary().getVisualBounds();
        stage.setMinWidth(Math.min(DeskWindow.LEAST_WIDTH, room.getWidth()));
        stage.setMinHeight(Math.min(DeskWindow.LEAST_HEIGHT, room.getHeight()));
        DeskHabits.Frame left = habits.frame()
                .filter(frame -> !Screen.getScreensForRectangle(
                                frame.left() + frame.width() / 4, frame.top(), frame.width() / 2, 40)
                        .isEmpty())
                .orElseGet(() -> new DeskHabits.Frame(
                        room.getMinX() + room.getWidth() * (1 - SHARE) / 2,
                        room.getMinY() + room.getHeight() * (1 - SHARE) / 2,
                        room.getWidth() * SHARE,
                        room.getHeight() * SHARE,
                        false));
        stage.setX(left.left());
        stage.setY(left.top());
        stage.setWidth(Math.max(left.width(), stage.getMinWidth()));
        stage.setHeight(Math.max(left.height(), stage.getMinHeight()));
        stage.setMaximized(left.whole());
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
