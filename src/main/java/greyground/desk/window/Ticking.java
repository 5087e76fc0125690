package greyground.desk.window;

import greyground.desk.model.BenchClocks;
import greyground.desk.model.BenchModel;
import greyground.desk.model.LiveDesk;
import greyground.desk.plan.PlanView;
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
    private final Runnable bell;
    private final BenchClocks clocks;
    private final PlanView plan;
    private final ClockStrip strip;
    private final DeskFrame frame;
    private final LiveDesk live;
    private final BenchModel model;
    private final PlateSight sight;
    private boolean wasMaking;

    Ticking(
            Runnable bell,
            BenchClocks clocks,
            PlanView plan,
            ClockStrip strip,
            DeskFrame frame,
            LiveDesk live,
            BenchModel model,
            PlateSight sight) {
        this.bell = bell;
        this.clocks = clocks;
        this.plan = plan;
        this.strip = strip;
        this.frame = frame;
        this.live = live;
        this.model = model;
        this.sight = sight;
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
        clocks.forgetTheDone();
        if (!clocks.ranOut().isEmpty()) {
            bell.run();
        }
        plan.tick();
        showClocks();
        // What is there within two ticks deserves no word.
        boolean makes = live.isMakingPlate() && model.state().isPresent();
        boolean computing = makes && wasMaking;
        wasMaking = makes;
        if (computing && frame.said().isEmpty()) {
            frame.say(sight.plate().isEmpty() ? COMPUTING : COMPUTING + "; until then the last one is shown");
        } else if (!computing && frame.said().startsWith(COMPUTING)) {
            frame.say("");
        }
    }

    /** Clocks that have begun, where the plan itself doesn't show them. */
    void showClocks() {
        strip.show(plan.isVisible() ? List.of() : clocks.begun());
    }
}
