package greyground.desk.plan;

import greyground.desk.model.BenchClocks;
import greyground.desk.model.Countdown;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The head of the wall card while clocks run: the step's time, large enough to be read from across the room, and what comes next. */
final class ClockFace extends VBox {
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

    /** Shows clocks, the first of them large. */
    void show(List<BenchClocks.StepClock> begun) {
        List<BenchClocks.StepClock> clocks = begun.stream().limit(MOST_CLOCKS).toList();
        boolean same = clocks.size() == tiles.size();
        for (int i = 0; same && i < tiles.size(); i++) {
            same = tiles.get(i).clock == clocks.get(i);
        }
        if (!same) {
            tiles.clear();
            getChildren().clear();
            FlowPane others = new FlowPane(8, 8);
            for (BenchClocks.StepClock clock : clocks) {
                Tile tile = new Tile(clock, tiles.isEmpty());
                if (tiles.isEmpty()) {
                    getChildren().add(tile);
                } else {
                    others.getChildren().add(tile);
                }
                tiles.add(tile);
            }
            if (!others.getChildren().isEmpty()) {
                getChildren().add(others);
            }
        }
        setVisible(!clocks.isEmpty());
        setManaged(!clocks.isEmpty());
        tiles.forEach(Tile::tick);
    }

    /** One clock. */
    private final class Tile extends VBox {
        private final BenchClocks.StepClock clock;
        private final boolean large;
        private final Label step = new Label();
        private final Label time = new Label();
        private final Label change = PlanWords.line("", "strong");
        private final Button start = new Button();
        private final Button take = new Button();

        Tile(BenchClocks.StepClock clock, boolean large) {
            super(4);
            this.clock = clock;
            this.large = large;
            getStyleClass().add("tile");
            step.getStyleClass().add("heading");
            step.setWrapText(true);
            step.setMinHeight(Region.USE_PREF_SIZE);
            time.getStyleClass().add("countdown");
            time.setMinSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
            start.setOnAction(pressed -> {
                clock.startOrStop();
                moved.run();
            });
            start.setMinWidth(72);
            start.setTooltip(new Tooltip("Stop this clock, or let it go on"));
            Button back = new Button("Set back");
            back.setMinWidth(Region.USE_PREF_SIZE);
            back.setAccessibleText("Set the clock of " + clock.step() + " back");
            back.setTooltip(new Tooltip("The whole time again; the clock stands"));
            back.setOnAction(pressed -> {
                clock.setBack();
                moved.run();
            });
            take.setMinWidth(Region.USE_PREF_SIZE);
            take.setTooltip(new Tooltip("Run for what the plan wants now; the time that has passed counts"));
            take.setOnAction(pressed -> {
                clock.takePlanned();
                moved.run();
            });
            HBox buttons = new HBox(8, start, back, take);
            buttons.setAlignment(Pos.CENTER_LEFT);
            if (large) {
                getChildren().addAll(step, time);
                setMaxWidth(Double.MAX_VALUE);
                if (!clock.next().isEmpty()) {
                    getChildren().add(PlanWords.line("Then: " + clock.next(), "strong"));
                }
                clock.cautions().stream()
                        .limit(room.getHeight() < LOW_ROOM ? 1 : MOST_CAUTIONS)
                        .forEach(care -> getChildren().add(PlanWords.line(PlanWords.CARE + care, "plain")));
                getChildren().addAll(change, buttons);
            } else {
                step.setMinWidth(Region.USE_PREF_SIZE);
                HBox line = new HBox(16, time, step, buttons);
                line.setAlignment(Pos.CENTER_LEFT);
                getChildren().addAll(line, change);
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
            getStyleClass().removeAll("over", "halted");
            if (over) {
                getStyleClass().add("over");
            } else if (!clock.isRunning()) {
                getStyleClass().add("halted");
            }
            start.setText(clock.act());
            start.setAccessibleText(clock.act() + " the clock of " + clock.step());
            start.setVisible(!over || clock.isRunning());
            start.setManaged(start.isVisible());
            String changed = clock.change();
            change.setText(changed);
            change.setVisible(!changed.isEmpty());
            change.setManaged(!changed.isEmpty());
            double planned = clock.otherwise().orElse(0.0);
            take.setText("Take " + Countdown.words(planned));
            take.setAccessibleText("Run the clock of " + clock.step() + " for " + Countdown.words(planned));
            take.setVisible(planned > 0);
            take.setManaged(planned > 0);
        }
    }
}
