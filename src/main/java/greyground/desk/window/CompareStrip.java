package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Comparison;
import greyground.desk.picture.Loupe;
import greyground.quantity.Unit;
import java.util.Optional;
import javafx.geometry.Rectangle2D;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** Two things side by side below the picture, at the loupe's scale, each with its words. */
final class CompareStrip extends HBox {
    /** How wide each picture is, in the window's pixels; the loupe's own are as large. */
    static final int PICTURE = 144;

    private final LoupeBench bench;
    private final Half left = new Half();
    private final Half right = new Half();
    private final TextField minutes = Controls.field(
            "other-bite",
            "Other bite, minutes",
            "Minutes in a fresh bath to lay beside the usual bite; Enter shows them",
            "number");
    private final HBox minutesRow = Controls.line(4, minutes, Controls.label("min"));

    /** A picture and its words. */
    private static final class Half extends HBox {
        private final ImageView image = new ImageView();
        private final Label title = Controls.wrapped("", "strong");
        private final Label words = Controls.wrapped("");

        Half() {
            super(8);
            StackPane frame = new StackPane(image);
            frame.setMinSize(PICTURE + 2, PICTURE + 2);
            frame.setMaxSize(PICTURE + 2, PICTURE + 2);
            frame.getStyleClass().add("frame");
            image.setFitWidth(PICTURE);
            image.setFitHeight(PICTURE);
            title.setWrapText(false);
            words.setMinWidth(0);
            words.setMinHeight(0);
            VBox told = Controls.growing(new VBox(4, title, words));
            told.setMinWidth(0);
            getChildren().addAll(frame, told);
            HBox.setHgrow(this, Priority.ALWAYS);
            setMinWidth(PICTURE + 2);
            setPrefWidth(PICTURE + 150);
            setMaxHeight(PICTURE + 2);
        }

        void show(Comparison.Side side, RoomLight light) {
            title.setText(side.title());
            words.setText(String.join("\n", side.lines()));
            image.setImage(null);
            side.picture().ifPresent(picture -> {
                Image shown = light.image(picture);
                // The middle of what the loupe sees, at the loupe's scale.
                double share = (double) PICTURE / Loupe.SIDE;
                double width = shown.getWidth() * share;
                double height = shown.getHeight() * share;
                image.setViewport(new Rectangle2D(
                        (shown.getWidth() - width) / 2, (shown.getHeight() - height) / 2, width, height));
                image.setImage(shown);
            });
        }
    }

    CompareStrip(LoupeBench bench) {
        super(16);
        this.bench = bench;
        setId("compare");
        getStyleClass().add("compare");
        minutes.setOnAction(entered -> bench.otherBite(minutes.getText()));
        Button close = Controls.button("Close", "close-compare", "Compare no more", bench::endComparison);
        VBox tools = new VBox(8, close, minutesRow);
        tools.setMinWidth(Region.USE_PREF_SIZE);
        getChildren().addAll(left, right, tools);
        setMinHeight(PICTURE + 18);
        lay(false);
    }

    private void lay(boolean shown) {
        Controls.show(this, shown);
    }

    void show(Comparison comparison, RoomLight light, boolean inches) {
        Optional<Comparison.Side> one = comparison.left(inches);
        Optional<Comparison.Side> other = comparison.right(inches);
        boolean shown = one.isPresent() && other.isPresent();
        lay(shown);
        if (!shown) {
            return;
        }
        left.show(one.get(), light);
        right.show(other.get(), light);
        boolean bites = comparison.kind() == Comparison.Kind.TWO_BITES;
        Controls.show(minutesRow, bites);
        if (bites && !minutes.isFocused()) {
            comparison
                    .otherMinutes(bench.usualBite())
                    .ifPresent(typed -> minutes.setText(Unit.MINUTES.words(typed, false)));
        }
        setAccessibleText("Comparison: " + words(one.get()) + "; " + words(other.get()));
    }

    private static String words(Comparison.Side side) {
        return side.title() + ", " + String.join(", ", side.lines());
    }
}
