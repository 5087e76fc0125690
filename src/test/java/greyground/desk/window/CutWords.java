package greyground.desk.window;

import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Labeled;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.control.skin.VirtualFlow;
import javafx.scene.text.Text;

/** Finds words that don't show whole: ended by dots, or past the edge of what holds them. */
final class CutWords {
    private static final double TOLERANCE = 1.01;

    private CutWords() {}

    static List<String> of(Parent root) {
        root.applyCss();
        root.layout();
        List<String> found = new ArrayList<>();
        for (Node node : DeskHand.seen(root)) {
            if (node instanceof Labeled labeled && !labeled.getText().isBlank() && hasRoom(labeled)) {
                if (!isToldWhole(labeled)) {
                    dotted(labeled, found);
                }
                outside(labeled, root, found);
            } else if (node instanceof TextField field && field.getStyleClass().contains("number")) {
                narrow(field, found);
            }
        }
        return found;
    }

    /** A cell that is rolled out of its list has no size. */
    private static boolean hasRoom(Node node) {
        return node.isManaged() || node.getLayoutBounds().getHeight() > 0;
    }

    /** Every word that ends in dots, whether or not a tooltip gives it whole. */
    static List<String> dotted(Parent root) {
        List<String> found = new ArrayList<>();
        for (Node node : DeskHand.seen(root)) {
            if (node instanceof Labeled labeled && !labeled.getText().isEmpty() && hasRoom(labeled)) {
                dotted(labeled, found);
            }
        }
        return found;
    }

    private static void dotted(Labeled labeled, List<String> found) {
        for (Node part : labeled.getChildrenUnmodifiable()) {
            if (part instanceof Text text && !text.getText().equals(labeled.getText())) {
                found.add("\"" + labeled.getText() + "\" shows as \"" + text.getText() + "\"");
            }
        }
    }

    /** A file's name may be long; then the pointer or a reader's voice gives it whole. */
    private static boolean isToldWhole(Labeled labeled) {
        Tooltip tip = labeled.getTooltip();
        String whole = tip == null ? "" : tip.getText();
        boolean told = whole.contains(labeled.getText()) || whole.endsWith(end(labeled.getText()));
        return told && !(labeled instanceof javafx.scene.control.ButtonBase);
    }

    private static String end(String name) {
        int comma = name.indexOf(", job ");
        String art = comma >= 0 ? name.substring(0, comma) : name.replace(" \u2013 not saved", "");
        return art;
    }

    private static void narrow(TextField field, List<String> found) {
        for (Node part : field.lookupAll(".text")) {
            if (part instanceof Text text
                    && text.isVisible()
                    && text.getLayoutBounds().getWidth() > field.getWidth() - 8) {
                found.add("field " + field.getId() + " is too narrow for \"" + text.getText() + "\"");
            }
        }
    }

    private static void outside(Labeled labeled, Parent root, List<String> found) {
        Bounds own = labeled.localToScene(labeled.getLayoutBounds());
        List<Node> holders = new ArrayList<>();
        for (Node each = labeled.getParent(); each != null; each = each.getParent()) {
            holders.add(each);
        }
        // What can be rolled to need not be seen at once.
        boolean rolls = holders.stream().anyMatch(each -> each instanceof ScrollPane || each instanceof VirtualFlow);
        for (Node each : holders) {
            Bounds held = each.localToScene(each.getLayoutBounds());
            boolean across = own.getMinX() >= held.getMinX() - TOLERANCE && own.getMaxX() <= held.getMaxX() + TOLERANCE;
            boolean down = rolls
                    || (own.getMinY() >= held.getMinY() - TOLERANCE && own.getMaxY() <= held.getMaxY() + TOLERANCE);
            if (!(across && down)) {
                found.add("\"" + labeled.getText() + "\" reaches past "
                        + each.getClass().getSimpleName() + " " + each.getStyleClass());
                return;
            }
        }
    }
}
