package greyground.desk.window;

import java.util.List;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.util.Duration;

/** What goes on by itself: clocks run and ring, and a plate that takes its time is said to be computed. */
final class Ticking {
    private static final String COMPUTING = "Computing the plate";

    private final Timeline timeline = new Timeline(new KeyFrame(Duration.millis(200), now -> tick()));
    private final DeskWindow desk;
    private final Runnable bell;
    private boolean wasMaking;

    Ticking(DeskWindow desk, Runnable bell) {
        this.desk = desk;
        this.bell = bell;
        timeline.setCycleCount(Animation.INDEFINITE);
    }

    void play() {
        timeline.play();
    }

    void stop() {
        timeline.stop();
    }

    /** A moment has passed, or a clock was touched. */
    void tick() {
        desk.clocks.forgetTheDone();
        if (!desk.clocks.ranOut().isEmpty()) {
            bell.run();
        }
        desk.keptClocks.keep(desk.clocks);
        desk.plan.tick();
        desk.zoom.refresh();
        showClocks();
        // What is there within two ticks deserves no word.
        boolean makes = desk.live.isMakingPlate() && desk.model.state().isPresent();
        desk.frame.tellWork(makes && wasMaking ? COMPUTING : "");
        wasMaking = makes;
    }

    /** Clocks that have begun, where the plan itself doesn't show them. */
    void showClocks() {
        desk.clockStrip.show(desk.plan.isVisible() ? List.of() : desk.clocks.begun());
    }
}
