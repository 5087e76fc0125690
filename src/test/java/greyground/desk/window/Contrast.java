package greyground.desk.window;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.layout.Background;
import javafx.scene.layout.BackgroundFill;
import javafx.scene.layout.Region;
import javafx.scene.paint.Color;
import javafx.scene.text.Text;

/**
 * How well words stand out from their ground: the contrast ratio of WCAG 2.1, (L1 + 0.05) / (L2 + 0.05) of relative luminances; 4.5 is
 * asked for (success criterion 1.4.3). What is disabled is left out, as there.
 */
final class Contrast {
    static final double LEAST = 4.5;

    private Contrast() {}

    /** Words that stand out too little, as they are drawn now. */
    static List<String> faint(Parent root) {
        root.applyCss();
        List<String> found = new ArrayList<>();
        for (Node node : DeskHand.seen(root)) {
            if (node instanceof Text text
                    && !text.getText().isBlank()
                    && !text.isDisabled()
                    && text.getFill() instanceof Color ink
                    && ink.getOpacity() > 0.5
                    && text.getOpacity() > 0.5) {
                Color ground = ground(text);
                double ratio = ratio(ink, ground);
                if (ratio < LEAST) {
                    found.add(String.format(
                            Locale.ROOT,
                            "\"%s\" has a contrast of %.2f (%s on %s)",
                            text.getText(),
                            ratio,
                            ink,
                            ground));
                }
            }
        }
        return found;
    }

    /** The nearest opaque ground behind a node. */
    private static Color ground(Node node) {
        for (Node each = node.getParent(); each != null; each = each.getParent()) {
            Background background = each instanceof Region region ? region.getBackground() : null;
            if (background != null && !background.getFills().isEmpty()) {
                List<BackgroundFill> fills = background.getFills();
                if (fills.get(fills.size() - 1).getFill() instanceof Color colour && colour.getOpacity() > 0.99) {
                    return colour;
                }
            }
        }
        return Color.WHITE;
    }

    /** WCAG 2.1, "contrast ratio". */
    static double ratio(Color one, Color other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    /** WCAG 2.1, "relative luminance". */
    private static double luminance(Color colour) {
        return 0.2126 * linear(colour.getRed())
                + 0.7152 * linear(colour.getGreen())
                + 0.0722 * linear(colour.getBlue());
    }

    private static double linear(double channel) {
        return channel <= 0.03928 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
    }
}
