package greyground.desk.window;

import greyground.desk.look.Controls;
import greyground.desk.model.BenchState;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import greyground.desk.picture.PictureView;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;

/** How large the film's pixels, or the art's, are on the screen. Pressed, each of them is one of the screen's; pressed again, all is seen. */
final class ZoomFigure {
    private static final double SAME = 1e-3;

    private final DeskWindow desk;
    private final Button figure;

    ZoomFigure(DeskWindow desk) {
        this.desk = desk;
        this.figure = Controls.button("", "zoom", "", this::toggle);
        figure.getStyleClass().add("on-picture");
        Controls.show(figure, false);
    }

    Node button() {
        return figure;
    }

    /** Pixels of the screen for one of the film's, or of the art's; empty where nothing is seen. */
    Optional<Double> scale() {
        PictureView seen = desk.seen();
        return desk.model
                .state()
                .filter(any -> seen.isVisible() || desk.sheet.isVisible())
                .map(state -> side(state, seen) / seen.view().perPixel());
    }

    /** Side of a pixel of what is seen: of art 1, of the film in millimetres. */
    private static double side(BenchState state, PictureView seen) {
        return seen.station() == Station.ART
                ? 1
                : Viewport.MILLIMETRES_PER_INCH / state.job().resolution().dotsPerInch();
    }

    /** Each pixel is one of the screen's; where it is so already, all is shown. */
    void toggle() {
        PictureView seen = desk.seen();
        scale().ifPresent(scale -> {
            if (Math.abs(scale - 1) < SAME) {
                seen.fit();
            } else {
                seen.go(seen.port().atScale(seen.port().perPixel() * scale));
            }
            refresh();
        });
    }

    void refresh() {
        Optional<Double> scale = scale();
        Controls.show(figure, scale.isPresent());
        scale.ifPresent(each -> {
            String words = String.format(Locale.ROOT, each < 0.1 ? "%.1f %%" : "%.0f %%", each * 100);
            if (!words.equals(figure.getText())) {
                String of = desk.seen().station() == Station.ART ? "the picture" : "the film";
                figure.setText(words);
                figure.setAccessibleText("Pixels of " + of + " at " + words);
                figure.getTooltip()
                        .setText("Pixels of " + of + " at " + words
                                + " of the screen's. Press for 100 %: one for one; press again for all (E)");
            }
        });
    }
}
