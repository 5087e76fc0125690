package greyground.desk.look;

import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;

/** How far work is, in words and as a bar, and what stops it; seen while it goes on. */
public final class WorkBar extends HBox {
    private final Label words = Controls.label("");
    private final ProgressBar bar;
    private final Button button;

    /**
     * A bar that is not seen.
     *
     * @param what is done, as in "making the film"
     * @param id of what stops it
     */
    public WorkBar(String what, String id, Runnable stop) {
        super(8);
        bar = Controls.progress("Progress of " + what, 160);
        button = Controls.button("Stop", id, "Stop " + what, stop);
        button.setAccessibleText("Stop " + what);
        setAlignment(Pos.CENTER_RIGHT);
        getStyleClass().add("works");
        getChildren().addAll(words, bar, button);
        show(false);
    }

    public void show(boolean wanted) {
        Controls.show(this, wanted);
    }

    public void focusStop() {
        button.requestFocus();
    }

    /** Tells how far it is, 0 to 1. */
    public void progress(double done, String told) {
        bar.setProgress(done);
        words.setText(told);
    }
}
