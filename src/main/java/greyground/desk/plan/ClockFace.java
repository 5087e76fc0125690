package greyground.desk.plan;

import greyground.desk.clock.BenchClocks;
import greyground.desk.clock.Countdown;
import greyground.desk.look.Controls;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The head of the wall card while clocks run: the step's time, large enough to be read from across the room, its cautions, and what comes next. */
final class ClockFace extends VBox {
    /** Stands before a caution. */
    static final String CARE = "\u26a0 ";

    private static final double WIDTH_SHARE = 0.9;
    private static final double HEIGHT_SHARE = 0.3;
    private static final double HEIGHT_SHARE_AMONG_OTHERS = 0.24;
    private static final double LOW_ROOM = 560;
    private static final double DIGIT_WIDTH = 0.58;
    private static final double LEAST_SIZE = 48;
    private static final double OTHER_SIZE = 32;
    private static final int MOST_CAUTIONS = 2;

    /** Further clocks are seen at their steps. */
    private static final int MOST_CLOCKS = 4;

    private final Region room;
    private final Runnable moved;
    private final List<Tile> tiles = new ArrayList<>();

    /**
     * A face without clocks.
     *
     * @param room that it may fill
     * @param moved hears of a clock that was started, stopped or set back here
     */
    ClockFace(Region room, Runnable moved) {
        this.room = room;
        this.moved = moved;
        setId("clock-face");
        getStyleClass().add("face");
        setMinHeight(Region.USE_PREF_SIZE);
        show(List.of());
    }

    /** Starts, stops or lets go on. */
    static Button start(BenchClocks.StepClock clock, String hint, Runnable moved) {
        Button start = Controls.button("Start", "start-clock", hint, () -> {
            clock.startOrStop();
            moved.run();
        });
        start.setMinWidth(72);
        return start;
    }

    /** Says what the button to start with would do now. */
    static void name(Button start, BenchClocks.StepClock clock) {
        start.setText(clock.act());
        start.setAccessibleText(clock.act() + " the clock of " + clock.step());
    }

    static Button back(BenchClocks.StepClock clock, Runnable moved) {
        Button back = Controls.button("Reset", "reset-clock", "The whole time again; the clock stands", () -> {
            clock.setBack();
            moved.run();
        });
        back.setAccessibleText("Reset the clock of " + clock.step());
        return back;
    }

    /** Shows clocks, the first of them large. */
    void show(List<BenchClocks.StepClock> begun) {
        List<BenchClocks.StepClock> clocks = begun.stream().limit(MOST_CLOCKS).toList();
        if (!clocks.equals(tiles.stream().map(tile -> tile.clock).toList())) {
            tiles.clear();
            clocks.forEach(clock -> tiles.add(new Tile(clock, tiles.isEmpty())));
            getChildren().setAll(tiles.stream().limit(1).toList());
            if (tiles.size() > 1) {
                FlowPane others = new FlowPane(8, 8);
                others.getChildren().setAll(tiles.subList(1, tiles.size()));
                getChildren().add(others);
            }
        }
        Controls.show(this, !clocks.isEmpty());
        tiles.forEach(Tile::tick);
    }

    private final class Tile extends VBox {
        private final BenchClocks.StepClock clock;
        private final boolean large;
        private final Label step = Controls.wrapped("", "heading");
        private final Label time = Controls.wrapped("", "countdown");
        private final Label change = Controls.wrapped("", "strong");
        private final Button start;
        private final Button take;

        Tile(BenchClocks.StepClock clock, boolean large) {
            super(4);
            this.clock = clock;
            this.large = large;
            getStyleClass().add("tile");
            time.setWrapText(false);
            time.setMinWidth(Region.USE_PREF_SIZE);
            start = start(clock, "Stop this clock, or continue it", moved);
            take = Controls.button(
                    "", "take-planned", "Run for what the plan wants now; the time that has passed counts", () -> {
                        clock.takePlanned();
                        moved.run();
                    });
            HBox buttons = Controls.line(8, start, back(clock, moved), take);
            if (large) {
                getChildren().addAll(step, time);
                setMaxWidth(Double.MAX_VALUE);
                clock.cautions().stream()
                        .limit(room.getHeight() < LOW_ROOM ? 1 : MOST_CAUTIONS)
                        .forEach(care -> getChildren().add(Controls.wrapped(CARE + care, "strong")));
                if (!clock.next().isEmpty()) {
                    getChildren().add(Controls.wrapped("Then: " + clock.next(), "plain"));
                }
                getChildren().addAll(change, buttons);
            } else {
                step.setMinWidth(Region.USE_PREF_SIZE);
                getChildren().addAll(Controls.line(16, time, step, buttons), change);
            }
        }

        void tick() {
            boolean over = clock.isOver();
            String words = clock.words();
            step.setText(over ? clock.step() + ": time is up" : clock.step());
            time.setText(words);
            double wide = room.getWidth() * WIDTH_SHARE / (DIGIT_WIDTH * Math.max(4, words.length()));
            double tall = room.getHeight() * (tiles.size() > 1 ? HEIGHT_SHARE_AMONG_OTHERS : HEIGHT_SHARE);
            double size = large ? Math.max(LEAST_SIZE, Math.min(wide, tall)) : OTHER_SIZE;
            time.setStyle("-fx-font-size: " + Math.rint(size) + "px;");
            Controls.look(this, "over", over);
            Controls.look(this, "halted", !over && !clock.isRunning());
            name(start, clock);
            Controls.show(start, !over || clock.isRunning());
            change.setText(clock.change());
            Controls.show(change, !change.getText().isEmpty());
            double planned = clock.otherwise().orElse(0.0);
            take.setText("Use " + Countdown.words(planned));
            take.setAccessibleText("Run the clock of " + clock.step() + " for " + Countdown.words(planned));
            Controls.show(take, planned > 0);
        }
    }
}
