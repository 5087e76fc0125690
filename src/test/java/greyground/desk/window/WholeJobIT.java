package greyground.desk.window;

import static greyground.desk.window.DeskHand.act;
import static greyground.desk.window.DeskHand.onScreen;
import static greyground.desk.window.DeskHand.waitFor;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.javafx.scene.input.DragboardHelper;
import com.sun.javafx.tk.TKClipboard;
import com.sun.javafx.tk.Toolkit;
import greyground.app.files.KeptFiles;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import greyground.film.job.Told;
import greyground.output.ExternalTool;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import javafx.scene.control.TextField;
import javafx.scene.input.DataFormat;
import javafx.scene.input.DragEvent;
import javafx.scene.input.Dragboard;
import javafx.scene.input.KeyCode;
import javafx.scene.input.TransferMode;
import javafx.util.Pair;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole job by hand: a picture dropped on the window, settings at each station, the plan, and a film that others read. */
class WholeJobIT {
    @TempDir
    Path folder;

    @Test
    void fromADroppedPictureToAFilmThatIndependentReadersAccept() throws Exception {
        Path art = folder.resolve("leaf.png");
        Files.copy(Path.of("testimages/leaf-alpha.png"), art);
        try (DeskHand hand = new DeskHand(folder.resolve("state"))) {
            drop(hand, art);
            waitFor("the art", () -> hand.desk().model.state().isPresent());
            set(hand, Station.ART, "title", "Leaf");
            hand.key(KeyCode.Q);
            set(hand, Station.FILM, "plate-width", "50");
            set(hand, Station.FILM, "plate-height", "60");
            set(hand, Station.FILM, "resolution", "720");
            set(hand, Station.FILM, "grain", "200");
            set(hand, Station.RESIST, "opening", "45");
            set(hand, Station.COPPER, "bite", "15");
            set(hand, Station.PRINT, "paper-density", "0.08");
            hand.rest();
            act(() -> hand.desk().go(Place.PLAN));
            waitFor("the plan", () -> !hand.desk().plan.lookupAll(".clock").isEmpty());
            Path job = folder.resolve("leaf.json");
            hand.toSave.add(job);
            hand.key(KeyCode.S, KeyCode.CONTROL);
            assertEquals("Leaf", KeptFiles.job(job).title());
            Path film = folder.resolve("leaf.pdf");
            hand.toSave.add(film);
            hand.key(KeyCode.M, KeyCode.CONTROL);
            waitFor("the film", () -> Files.exists(film) && !hand.desk().export.isWorking());
            // qpdf: syntax and cross references; it fails on errors and on warnings alike.
            String checked = ExternalTool.run(folder, "qpdf", "--check", film.toString());
            assertTrue(checked.contains("No syntax or stream encoding errors found"), checked);
            // poppler: the image at the printer's own resolution, one bit a pixel; the plate in true size.
            String images = ExternalTool.run(folder, "pdfimages", "-list", film.toString());
            assertTrue(images.matches("(?s).*image +[0-9]+ +[0-9]+ +gray +1 +1 .* 720 +720 .*"), images);
            String boxes = ExternalTool.run(folder, "pdfinfo", "-box", film.toString());
            double[] trim = numbers(boxes.lines()
                    .filter(line -> line.startsWith("TrimBox"))
                    .findFirst()
                    .orElseThrow());
            assertEquals(50, (trim[2] - trim[0]) * 25.4 / 72, 0.05);
            assertEquals(60, (trim[3] - trim[1]) * 25.4 / 72, 0.05);
            assertEquals(15, KeptFiles.workshop(film).bath().biteMinutes().value());
            // A film that is stopped leaves nothing.
            act(() -> hand.desk().tell("plate", Told.as(Map.of("plate", "300x300mm", "resolution", "2880dpi"))));
            Path stopped = folder.resolve("large.pdf");
            hand.toSave.add(stopped);
            hand.press("make-film");
            waitFor("its beginning", () -> hand.desk().export.isWorking());
            hand.press("stop-film");
            waitFor("its end", () -> !hand.desk().export.isWorking());
            assertFalse(Files.exists(stopped));
            try (var left = Files.list(folder)) {
                assertEquals(
                        List.of("leaf.json", "leaf.pdf", "leaf.png", "state"),
                        left.map(file -> file.getFileName().toString()).sorted().toList());
            }
        }
    }

    private static double[] numbers(String line) {
        return java.util.Arrays.stream(
                        line.substring(line.indexOf(':') + 1).strip().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static void set(DeskHand hand, Station station, String setting, String words) throws Exception {
        act(() -> {
            hand.desk().choose(station);
            TextField field = hand.find("setting-" + setting, TextField.class);
            field.requestFocus();
            field.setText(words);
            field.fireEvent(new javafx.event.ActionEvent());
            hand.desk().picture.requestFocus();
        });
        String shown =
                onScreen(() -> hand.find("setting-" + setting, TextField.class).getText());
        assertEquals(words, shown, setting);
    }

    /** As the system's own drag would end: over the window, then let go. */
    private static void drop(DeskHand hand, Path file) throws Exception {
        act(() -> {
            var clipboard = Toolkit.getToolkit().createLocalClipboard();
            // A clipboard of one's own window knows no ways of taking; a drag from another program's copies.
            TKClipboard dragged = (TKClipboard) Proxy.newProxyInstance(
                    WholeJobIT.class.getClassLoader(),
                    new Class<?>[] {TKClipboard.class},
                    (proxy, method, given) -> method.getName().equals("getTransferModes")
                            ? EnumSet.of(TransferMode.COPY)
                            : method.invoke(clipboard, given));
            Dragboard board = DragboardHelper.createDragboard(dragged);
            clipboard.putContent(new Pair<>(DataFormat.FILES, List.of(file.toFile())));
            for (var kind : List.of(DragEvent.DRAG_OVER, DragEvent.DRAG_DROPPED)) {
                hand.root()
                        .fireEvent(new DragEvent(
                                kind, board, 400, 300, 400, 300, TransferMode.COPY, null, hand.root(), null));
            }
        });
    }
}
