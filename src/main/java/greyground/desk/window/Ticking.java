package greyground.desk.window;

import java.util.List;
import javafx.animation.Animation;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.util.Duration;

/** What goes on by itself: clocks run and ring, and a plate that takes its time is said to be computed. */
final class Ticking {
    private static final String COMPUTING =
            "Computing the plate: a new grain or bath takes some seconds the first time";

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
        desk.plan.tick();
        showClocks();
        // What is there within two ticks deserves no word.
        boolean makes = desk.live.isMakingPlate() && desk.model.state().isPresent();
        boolean computing = makes && wasMaking;
        wasMaking = makes;
        if (computing && desk.frame.said().isEmpty()) {
            desk.frame.say(desk.sight.plate().isEmpty() ? COMPUTING : COMPUTING + "; until then the last one is shown");
        } else if (!computing && desk.frame.said().startsWith(COMPUTING)) {
            desk.frame.say("");
        }
    }

    /** Clocks that have begun, where the plan itself doesn't show them. */
    void showClocks() {
        desk.clockStrip.show(desk.plan.isVisible() ? List.of() : desk.clocks.begun());
    }
}
