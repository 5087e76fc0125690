package greyground.desk.window;

import greyground.desk.model.Hand;
import greyground.desk.model.Place;
import greyground.desk.model.Station;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;

/** The keys that work everywhere in the window; plain letters only where no text is being typed. */
final class DeskKeys {
    private DeskKeys() {}

    static void bind(DeskWindow desk, Node root) {
        root.addEventFilter(KeyEvent.KEY_PRESSED, event -> {
            if (withCommand(desk, event) || function(desk, event)) {
                event.consume();
            }
        });
        root.addEventHandler(KeyEvent.KEY_PRESSED, event -> {
            boolean typing = event.getTarget() instanceof TextInputControl || event.getTarget() instanceof ComboBox;
            boolean plain = !event.isShortcutDown() && !event.isAltDown() && !event.isControlDown();
            if (!typing && plain && letter(desk, event.getCode())) {
                event.consume();
            }
        });
    }

    private static boolean is(KeyEvent event, KeyCode code, KeyCombination.Modifier... with) {
        return new KeyCodeCombination(code, with).match(event);
    }

    private static boolean withCommand(DeskWindow desk, KeyEvent event) {
        KeyCombination.Modifier command = KeyCombination.SHORTCUT_DOWN;
        KeyCombination.Modifier shift = KeyCombination.SHIFT_DOWN;
        if (is(event, KeyCode.Z, command, shift) || is(event, KeyCode.Y, command)) {
            desk.model.redo();
        } else if (is(event, KeyCode.Z, command)) {
            desk.model.undo();
        } else if (is(event, KeyCode.O, command, shift)) {
            desk.files.askRecent();
        } else if (is(event, KeyCode.O, command)) {
            desk.files.askOpen();
        } else if (is(event, KeyCode.S, command, shift)) {
            desk.files.saveJobAs();
        } else if (is(event, KeyCode.S, command)) {
            desk.files.saveJob();
        } else if (is(event, KeyCode.E, command)) {
            desk.export.ask();
        } else if (is(event, KeyCode.P, command)) {
            desk.printFilm();
        } else {
            return false;
        }
        return true;
    }

    private static boolean function(DeskWindow desk, KeyEvent event) {
        switch (event.getCode()) {
            case F1 -> desk.showKeys(!desk.areKeysShown());
            case F2 -> desk.toggle(Place.PLAN);
            case F5 -> desk.toggle(Place.TEST_PLATE);
            case F3 -> desk.shineSafely(!desk.isSafe());
            case F4 -> {
                if (event.isAltDown()) {
                    return false;
                }
                desk.measureInInches(!desk.isInInches());
            }
            case F6 -> desk.nextPart();
            default -> {
                return false;
            }
        }
        return true;
    }

    private static boolean letter(DeskWindow desk, KeyCode code) {
        if (desk.model.state().isEmpty()) {
            return false;
        }
        switch (code) {
            case DIGIT1, NUMPAD1 -> desk.choose(Station.ART);
            case DIGIT2, NUMPAD2 -> desk.choose(Station.FILM);
            case DIGIT3, NUMPAD3 -> desk.choose(Station.RESIST);
            case DIGIT4, NUMPAD4 -> desk.choose(Station.COPPER);
            case DIGIT5, NUMPAD5 -> desk.choose(Station.PRINT);
            case A -> desk.seen().fit();
            case T -> desk.trueSize();
            case S -> desk.toggle(Place.SHEET);
            case U -> desk.turnSheetOver();
            case L -> desk.toggleLoupe();
            case F -> desk.loupeBench.freeze();
            case M -> desk.loupeBench.twoBites();
            case W -> desk.artTools.take(Hand.PICK_WHITE);
            case B -> desk.artTools.take(Hand.PICK_BLACK);
            case C -> desk.artTools.take(Hand.CROP);
            case V -> desk.artTools.take(Hand.LEVEL);
            case P -> desk.artTools.togglePlateShape();
            case OPEN_BRACKET -> desk.artTools.quarter(false);
            case CLOSE_BRACKET -> desk.artTools.quarter(true);
            default -> {
                return false;
            }
        }
        return true;
    }
}
