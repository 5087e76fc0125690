package greyground.desk.window;

import greyground.app.print.PrinterAtHand;
import greyground.desk.clock.BenchClocks;
import greyground.desk.model.DeskFolder;
import greyground.desk.model.DeskServices;
import greyground.desk.model.FileAsking;
import greyground.desk.model.Place;
import greyground.desk.model.ProofWords;
import greyground.desk.model.Station;
import greyground.desk.setting.Setting;
import greyground.desk.setting.Settings;
import greyground.film.job.Told;
import java.awt.image.BufferedImage;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.FutureTask;
import java.util.stream.Stream;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.SnapshotParameters;
import javafx.scene.image.WritableImage;
import javafx.scene.transform.Scale;
import javafx.stage.Stage;
import javax.imageio.ImageIO;
import javax.print.DocFlavor;
import javax.print.StreamPrintServiceFactory;

/** Draws the pictures of the window that the guide shows. Arguments: a folder, the art, and anything for the test plate alone. */
final class DeskPictures {
    private DeskPictures() {}

    static <T> T onScreen(Callable<T> work) throws Exception {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        return task.get();
    }

    /** Writes one picture for each look of the window. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        Path art = Path.of(arguments[1]);
        NativeParts.start();
        Path state = Files.createTempDirectory("desk");
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
        DeskWindow desk = onScreen(() -> new DeskWindow(new DeskServices(
                none,
                new DeskFolder(state),
                1,
                () -> LocalDate.of(2026, 11, 25),
                System::nanoTime,
                java.time.InstantSource.system(),
                Platform::runLater,
                DeskPictures::invented,
                () -> {},
                shown -> {})));
        Stage stage = onScreen(() -> {
            Stage made = new Stage();
            made.setScene(new Scene(desk.root(), 1400, 900));
            made.show();
            return made;
        });
        shot(desk, stage, folder, "empty", 1400, 900, 1);
        onScreen(() -> {
            desk.begin(Optional.of(art));
            return null;
        });
        while (desk.model.state().isEmpty()) {
            Thread.sleep(50);
        }
        rest(desk);
        shot(desk, stage, folder, "arrival", 1100, 700, 1);
        onScreen(() -> {
            desk.choose(Station.ART);
            desk.folds.tones(true);
            desk.tell("tones", Told.as(Map.of("tones", "30:36,70:74")));
            return null;
        });
        shot(desk, stage, folder, "tones", 1100, 700, 1);
        onScreen(() -> {
            desk.model.undo();
            desk.folds.tones(false);
            desk.choose(Station.PRINT);
            desk.split.againstArt(true);
            return null;
        });
        shot(desk, stage, folder, "against-art", 1100, 700, 1);
        onScreen(() -> {
            desk.split.againstArt(false);
            return null;
        });
        if (arguments.length > 2) {
            TestPlatePictures.draw(desk, stage, folder, state);
            System.exit(0);
        }
        for (Station station : Station.values()) {
            onScreen(() -> {
                desk.choose(station);
                return null;
            });
            shot(desk, stage, folder, station.label().toLowerCase(java.util.Locale.ROOT), 1400, 900, 1);
        }
        onScreen(() -> {
            desk.go(Place.SHEET);
            return null;
        });
        shot(desk, stage, folder, "sheet", 1400, 900, 1);
        onScreen(() -> {
            desk.turnSheetOver();
            desk.printFilm();
            return null;
        });
        shot(desk, stage, folder, "sheet-on-plate", 1100, 700, 1);
        onScreen(() -> {
            desk.printing.leave();
            desk.sheet.picture().go(desk.sheet.picture().port().atScale(0.02).about(26, 30));
            return null;
        });
        shot(desk, stage, folder, "sheet-near", 1100, 700, 1);
        onScreen(() -> {
            desk.sheet.picture().fit();
            desk.shineSafely(true);
            desk.printFilm();
            return null;
        });
        shot(desk, stage, folder, "sheet-safelight", 1100, 700, 1);
        onScreen(() -> {
            desk.shineSafely(false);
            desk.printing.leave();
            desk.choose(Station.PRINT);
            return null;
        });
        onScreen(() -> {
            desk.picture.goTo(108, 60);
            return null;
        });
        shot(desk, stage, folder, "print-near", 1400, 900, 1);
        onScreen(() -> {
            desk.choose(Station.COPPER);
            desk.picture.fit();
            desk.toggleLoupe();
            desk.picture.layLoupe(108, 74);
            return null;
        });
        shot(desk, stage, folder, "loupe", 1100, 700, 1);
        shot(desk, stage, folder, "loupe-200", 1100, 700, 2);
        compared(desk, stage, folder);
        onScreen(() -> {
            desk.choose(Station.RESIST);
            desk.root().lookup("#setting-land").requestFocus();
            desk.toggleLoupe();
            desk.tell("crop", Told.as(Map.of("crop", "10%,10%,50%,80%")));
            return null;
        });
        shot(desk, stage, folder, "resist-1100", 1100, 700, 1);
        onScreen(() -> {
            desk.shineSafely(true);
            desk.choose(Station.ART);
            return null;
        });
        shot(desk, stage, folder, "safelight", 1100, 700, 1);
        onScreen(() -> {
            desk.go(Place.PLAN);
            return null;
        });
        shot(desk, stage, folder, "plan-safelight", 1100, 700, 1);
        onScreen(() -> {
            desk.shineSafely(false);
            desk.go(Place.PLAN);
            desk.mayClose(() -> {});
            return null;
        });
        shot(desk, stage, folder, "plan", 1400, 900, 1);
        onScreen(() -> {
            desk.frame.messages.withdraw();
            desk.model.note("note", "", notes -> notes.withPlate("Second state, warm bath."));
            desk.model.note(
                    "proof",
                    "",
                    notes -> notes.withProof(ProofWords.read("12", ProofWords.Kind.DEPTH, "14"))
                            .withProof(ProofWords.read("17", ProofWords.Kind.LIGHTNESS, "10 83, 40 58, 80 27.5")));
            desk.clocks.all().get(0).startOrStop();
            desk.clocks.of("Bite").orElseThrow().startOrStop();
            return null;
        });
        shot(desk, stage, folder, "plan-clock", 1400, 900, 1);
        shot(desk, stage, folder, "plan-clock-1100", 1100, 700, 1);
        onScreen(() -> {
            desk.root().lookup("#ask-log").requestFocus();
            ((javafx.scene.control.Button) desk.root().lookup("#ask-log")).fire();
            return null;
        });
        while (onScreen(() -> desk.root().lookup("#stop-log").getParent().isVisible())) {
            Thread.sleep(100);
        }
        onScreen(() -> {
            desk.clocks.begun().forEach(BenchClocks.StepClock::setBack);
            desk.root().lookup("#proof-measured").requestFocus();
            return null;
        });
        shot(desk, stage, folder, "bite-log", 1400, 900, 1);
        TestPlatePictures.draw(desk, stage, folder, state);
        System.exit(0);
    }

    /** A printer that is not there: Java's own writer of PostScript. */
    static List<PrinterAtHand> invented() {
        return Stream.of(StreamPrintServiceFactory.lookupStreamPrintServiceFactories(
                        DocFlavor.SERVICE_FORMATTED.PAGEABLE, "application/postscript"))
                .map(kind -> PrinterAtHand.of(kind.getPrintService(OutputStream.nullOutputStream())))
                .toList();
    }

    /** Two places, two bite times, and warnings with their places. */
    private static void compared(DeskWindow desk, Stage stage, Path folder) throws Exception {
        onScreen(() -> {
            desk.loupeBench.freeze();
            desk.picture.layLoupe(84, 90);
            return null;
        });
        shot(desk, stage, folder, "two-places-copper", 1400, 900, 1);
        onScreen(() -> {
            desk.choose(Station.PRINT);
            desk.picture.layLoupe(84, 90);
            return null;
        });
        shot(desk, stage, folder, "two-places-print", 1100, 700, 1);
        shot(desk, stage, folder, "two-places-200", 1100, 700, 2);
        onScreen(() -> {
            desk.loupeBench.twoBites();
            desk.picture.layLoupe(84, 90);
            return null;
        });
        shot(desk, stage, folder, "two-bites", 1100, 700, 1);
        onScreen(() -> {
            desk.shineSafely(true);
            return null;
        });
        shot(desk, stage, folder, "two-bites-safelight", 1100, 700, 1);
        onScreen(() -> {
            desk.shineSafely(false);
            desk.loupeBench.endComparison();
            desk.toggleLoupe();
            desk.choose(Station.COPPER);
            desk.picture.fit();
            desk.model.change(
                    "opening",
                    "",
                    state ->
                            ((Setting.Measure) Settings.named("opening")).with(state, 120, LocalDate.of(2026, 11, 25)));
            return null;
        });
        shot(desk, stage, folder, "warnings", 1100, 700, 1);
        onScreen(() -> {
            desk.model.undo();
            desk.choose(Station.ART);
            desk.artTools.keepPlateShape(true);
            return null;
        });
        shot(desk, stage, folder, "art-crop", 1100, 700, 1);
        onScreen(() -> {
            desk.artTools.keepPlateShape(false);
            desk.model.undo();
            desk.toggleLoupe();
            return null;
        });
    }

    static void rest(DeskWindow desk) throws Exception {
        int quiet = 0;
        while (quiet < 3) {
            Thread.sleep(120);
            quiet = onScreen(() -> desk.isAtRest() && !desk.lessons.isWorking()) ? quiet + 1 : 0;
        }
    }

    static void shot(DeskWindow desk, Stage stage, Path folder, String name, int width, int height, double scale)
            throws Exception {
        shot(desk, stage, folder, name, width, height, scale, true);
    }

    static void shot(
            DeskWindow desk, Stage stage, Path folder, String name, int width, int height, double scale, boolean rested)
            throws Exception {
        onScreen(() -> {
            stage.setWidth(width);
            stage.setHeight(height);
            return null;
        });
        Thread.sleep(200);
        if (rested) {
            rest(desk);
        }
        Thread.sleep(300);
        BufferedImage image = onScreen(() -> {
            SnapshotParameters parameters = new SnapshotParameters();
            parameters.setTransform(new Scale(scale, scale));
            WritableImage seen = desk.root().snapshot(parameters, null);
            int across = (int) seen.getWidth();
            int down = (int) seen.getHeight();
            BufferedImage copy = new BufferedImage(across, down, BufferedImage.TYPE_INT_RGB);
            for (int y = 0; y < down; y++) {
                for (int x = 0; x < across; x++) {
                    copy.setRGB(x, y, seen.getPixelReader().getArgb(x, y));
                }
            }
            return copy;
        });
        ImageIO.write(image, "png", folder.resolve("desk-" + name + ".png").toFile());
    }
}
