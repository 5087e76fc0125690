package greyground.desk.window;

import greyground.desk.model.Hand;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;

/** The keys that work everywhere in the window; plain letters only where no text is being typed and something lies on the bench. */
final class DeskKeys {
    private static final Map<String, Consumer<DeskWindow>> ALWAYS = Map.ofEntries(
            Map.entry("Shortcut+Z", desk -> desk.model.undo()),
            Map.entry("Shortcut+Shift+Z", desk -> desk.model.redo()),
            Map.entry("Shortcut+Y", desk -> desk.model.redo()),
            Map.entry("Shortcut+O", desk -> desk.files.askOpen()),
            Map.entry("Shortcut+Shift+O", desk -> desk.files.askRecent()),
            Map.entry("Shortcut+S", desk -> desk.files.saveJob()),
            Map.entry("Shortcut+Shift+S", desk -> desk.files.saveJobAs()),
            Map.entry("Shortcut+M", desk -> desk.export.ask()),
            Map.entry("Shortcut+P", DeskWindow::printFilm),
            Map.entry("F1", desk -> desk.toggle(desk.keys)),
            Map.entry("F2", desk -> desk.toggle(Place.PLAN)),
            Map.entry("F3", desk -> desk.shineSafely(!desk.isSafe())),
            Map.entry("F4", desk -> desk.wishes.inches(!desk.wishes.inches())),
            Map.entry("F5", desk -> desk.toggle(Place.TEST_PLATE)),
            Map.entry("F6", DeskWindow::nextPart),
            Map.entry("F7", desk -> desk.folds.settings(!desk.folds.settings())),
            Map.entry("F8", desk -> desk.folds.tones(!desk.folds.tones())),
            Map.entry("F9", desk -> desk.toggle(Place.WORKSHOP)),
            Map.entry("F11", DeskWindow::fillScreen),
            Map.entry("F10", desk -> desk.head.openMenu()));

    private static final Map<KeyCode, Consumer<DeskWindow>> LETTERS = Map.ofEntries(
            Map.entry(KeyCode.A, desk -> desk.seen().fit()),
            Map.entry(KeyCode.T, DeskWindow::trueSize),
            Map.entry(KeyCode.E, desk -> desk.zoom.toggle()),
            Map.entry(
                    KeyCode.D,
                    desk -> desk.wishes.surround(desk.wishes.surround().next())),
            Map.entry(KeyCode.S, desk -> desk.toggle(Place.SHEET)),
            Map.entry(KeyCode.U, DeskWindow::turnSheetOver),
            Map.entry(KeyCode.L, DeskWindow::toggleLoupe),
            Map.entry(KeyCode.N, desk -> desk.split.toggleArt()),
            Map.entry(KeyCode.G, desk -> desk.split.toggleLost()),
            Map.entry(KeyCode.J, desk -> desk.split.toggleKept()),
            Map.entry(KeyCode.O, desk -> desk.split.hold()),
            Map.entry(KeyCode.R, desk -> desk.folds.rulers(!desk.folds.rulers())),
            Map.entry(KeyCode.W, DeskWindow::toggleWarnings),
            Map.entry(KeyCode.F, desk -> desk.loupeBench.freeze()),
            Map.entry(KeyCode.M, desk -> desk.loupeBench.twoBites()),
            Map.entry(KeyCode.P, desk -> desk.artTools.take(Hand.PICK_WHITE)),
            Map.entry(KeyCode.K, desk -> desk.artTools.take(Hand.PICK_BLACK)),
            Map.entry(KeyCode.X, desk -> desk.artTools.take(Hand.CROP)),
            Map.entry(KeyCode.V, desk -> desk.artTools.take(Hand.LEVEL)),
            Map.entry(KeyCode.H, desk -> desk.artTools.togglePlateShape()),
            Map.entry(KeyCode.Q, desk -> desk.artTools.quarter(true)));

    private static final Map<KeyCode, Consumer<DeskWindow>> SHIFTED =
            Map.of(KeyCode.Q, desk -> desk.artTools.quarter(false));

    private DeskKeys() {}

    static void bind(DeskWindow desk, Node root) {
        Map<KeyCombination, Consumer<DeskWindow>> always = new HashMap<>();
        ALWAYS.forEach((keys, act) -> always.put(KeyCombination.keyCombination(keys), act));
        root.addEventFilter(
                KeyEvent.KEY_PRESSED,
                event -> always.entrySet().stream()
                        .filter(act -> act.getKey().match(event))
                        .findFirst()
                        .ifPresent(act -> {
                            act.getValue().accept(desk);
                            event.consume();
                        }));
        root.addEventHandler(KeyEvent.KEY_PRESSED, event -> {
            boolean typing = event.getTarget() instanceof TextInputControl || event.getTarget() instanceof ComboBox;
            boolean plain = !event.isShortcutDown() && !event.isAltDown() && !event.isControlDown();
            if (!typing && plain && desk.model.state().isPresent() && letter(desk, event)) {
                event.consume();
            }
        });
    }

    private static boolean letter(DeskWindow desk, KeyEvent event) {
        KeyCode code = event.getCode();
        Consumer<DeskWindow> plain = LETTERS.get(code);
        Consumer<DeskWindow> act = event.isShiftDown() ? SHIFTED.getOrDefault(code, plain) : plain;
        if (act != null) {
            act.accept(desk);
            return true;
        }
        Optional<Station> numbered = Stream.of(Station.values())
                .filter(station -> code.isDigitKey() && code.getName().endsWith(Integer.toString(station.number())))
                .findFirst();
        numbered.ifPresent(desk::choose);
        return numbered.isPresent();
    }
}
