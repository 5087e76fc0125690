package greyground.desk.look;

import java.util.function.DoubleConsumer;
import javafx.animation.PauseTransition;
import javafx.util.Duration;

/** Whether what is shown was computed from what lies on the bench now. What was not is dimmed, unless the new comes within a blink. */
public final class Freshness {
    private static final Duration BLINK = Duration.millis(200);
    private static final double DIM = 0.4;

    private final PauseTransition blink = new PauseTransition(BLINK);
    private final DoubleConsumer opacity;
    private boolean stale;

    /**
     * What is fresh to begin with.
     *
     * @param opacity sets that of what is shown, 0 to 1
     */
    public Freshness(DoubleConsumer opacity) {
        this.opacity = opacity;
        blink.setOnFinished(over -> opacity.accept(DIM));
    }

    /** What is shown belongs to a state that is past. */
    public void stale() {
        if (!stale) {
            stale = true;
            blink.playFromStart();
        }
    }

    /** What is shown has just come, or nothing is. */
    public void fresh() {
        stale = false;
        blink.stop();
        opacity.accept(1);
    }

    public boolean isStale() {
        return stale;
    }
}
