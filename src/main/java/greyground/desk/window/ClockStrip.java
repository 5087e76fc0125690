package greyground.desk.window;

import greyground.desk.clock.BenchClocks;
import greyground.desk.look.Controls;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;

/** The clocks that have begun, at the window's foot, while something else than the plan is looked at. Pressing one goes to the plan. */
final class ClockStrip extends FlowPane {
    private final Runnable toPlan;
    private List<BenchClocks.StepClock> shown = List.of();

    ClockStrip(Runnable toPlan) {
        super(8, 8);
        this.toPlan = toPlan;
        setId("clock-strip");
        getStyleClass().add("clock-strip");
        setMinHeight(Region.USE_PREF_SIZE);
        setPrefWrapLength(DeskWindow.LEAST_WIDTH);
        show(List.of());
    }

    void show(List<BenchClocks.StepClock> clocks) {
        if (!clocks.equals(shown)) {
            shown = List.copyOf(clocks);
            getChildren().clear();
            for (int i = 0; i < shown.size(); i++) {
                getChildren().add(Controls.button("", "strip-clock-" + i, "Go to the plan (F2)", toPlan));
            }
        }
        for (int i = 0; i < shown.size(); i++) {
            BenchClocks.StepClock clock = shown.get(i);
            Button button = (Button) getChildren().get(i);
            String state = clock.isOver() ? "  time is up  " : clock.isRunning() ? "  " : "  stopped at  ";
            button.setText(clock.step() + state + clock.words());
            button.setAccessibleText("Clock of " + button.getText() + ": go to the plan");
            button.getStyleClass().setAll("button", "strip-clock");
            Controls.look(button, "over", clock.isOver());
        }
        Controls.show(this, !shown.isEmpty());
    }
}
