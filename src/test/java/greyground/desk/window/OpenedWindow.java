package greyground.desk.window;

import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import java.nio.file.Path;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.stage.Stage;

/** A window on whatever screen there is, which opens one picture after the other and says how long each took to be seen. */
public final class OpenedWindow {
    private final DeskWindow desk;

    /** Shows it, 1600 x 1000, with nothing on the bench; what it remembers goes to the folder. */
    public OpenedWindow(Path state) throws Exception {
        CountDownLatch started = new CountDownLatch(1);
        Platform.startup(started::countDown);
        started.await();
        FileAsking none = new FileAsking() {
            @Override
            public Optional<Path> open(String title, Kind kind) {
                return Optional.empty();
            }

            @Override
            public Optional<Path> save(String title, Kind kind, String suggested) {
                return Optional.empty();
            }
        };
        this.desk = onScreen(() -> {
            DeskWindow made = new DeskWindow(new DeskServices(
                    none,
                    new DeskFolder(state),
                    ProcessHandle.current().pid(),
                    () -> LocalDate.of(2026, 12, 1),
                    System::nanoTime,
                    InstantSource.system(),
                    Platform::runLater,
                    List::of,
                    () -> {},
                    folder -> {}));
            Stage stage = new Stage();
            stage.setScene(new Scene(made.root(), 1600, 1000));
            stage.show();
            return made;
        });
    }

    private static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get();
    }

    /** Opens a picture; returns seconds until it is seen, and until its plate is there and nothing is computed any more. */
    public double[] open(Path art) throws Exception {
        long began = System.nanoTime();
        onScreen(() -> {
            desk.model.leave();
            desk.files.open(art);
            return null;
        });
        double[] seconds = new double[2];
        while (!onScreen(() -> isSeen(art))) {
            if (onScreen(() -> !desk.frame.messages.said().isEmpty())) {
                throw new IllegalStateException(onScreen(desk.frame.messages::said));
            }
            Thread.sleep(4);
        }
        seconds[0] = (System.nanoTime() - began) / 1e9;
        while (!onScreen(() -> desk.isAtRest() && desk.sight.plate().isPresent())) {
            Thread.sleep(10);
        }
        seconds[1] = (System.nanoTime() - began) / 1e9;
        return seconds;
    }

    /** The art arrives on its plate, or at its station: either way it is seen. */
    private boolean isSeen(Path art) {
        return desk.picture.shows().filter(shown -> shown.art().equals(art)).isPresent();
    }
}
