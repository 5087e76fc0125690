package greyground.desk.window;

import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** How far a large picture is opened, and a way to stop; what opens at once never shows it. */
final class OpeningBar extends HBox {
    private static final long PATIENCE_NANOS = TimeUnit.MILLISECONDS.toNanos(400);

    private final LongSupplier nanoTime;
    private final ProgressBar bar = new ProgressBar(0);
    private long began;
    private boolean opening;

    /**
     * A bar that is not seen.
     *
     * @param stop gives up what is being opened
     */
    OpeningBar(LongSupplier nanoTime, Runnable stop) {
        super(8);
        this.nanoTime = nanoTime;
        setAlignment(Pos.CENTER_RIGHT);
        Label words = new Label("Opening the picture");
        words.setMinWidth(Region.USE_PREF_SIZE);
        bar.setPrefWidth(160);
        bar.setAccessibleText("Progress of opening the picture");
        Button button = new Button("Stop");
        button.setId("stop-opening");
        button.setAccessibleText("Stop opening the picture");
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setOnAction(pressed -> stop.run());
        getChildren().addAll(words, bar, button);
        seen(false);
    }

    private void seen(boolean wanted) {
        setVisible(wanted);
        setManaged(wanted);
    }

    /**
     * Hears how far it is.
     *
     * @param done 0 to 1; 1 is the end, however it came
     */
    void progress(double done) {
        if (done >= 1) {
            opening = false;
            seen(false);
            return;
        }
        if (!opening) {
            opening = true;
            began = nanoTime.getAsLong();
        }
        bar.setProgress(done);
        seen(nanoTime.getAsLong() - began > PATIENCE_NANOS);
    }
}
