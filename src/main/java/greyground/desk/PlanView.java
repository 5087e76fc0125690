package greyground.desk;

import greyground.plan.ExposurePlan;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.LongSupplier;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The plan as a wall card: every step in order, its numbers, its cautions, and a clock where time counts. */
final class PlanView extends ScrollPane {
    private final LongSupplier nanoTime;
    private final VBox card = new VBox(0);
    private final List<Clock> clocks = new ArrayList<>();
    private @Nullable ExposurePlan shown;

    PlanView(LongSupplier nanoTime) {
        super();
        this.nanoTime = nanoTime;
        card.getStyleClass().add("card");
        card.setMaxWidth(860);
        HBox middle = new HBox(card);
        middle.setAlignment(Pos.TOP_CENTER);
        HBox.setHgrow(card, Priority.ALWAYS);
        setContent(middle);
        setFitToWidth(true);
        setHbarPolicy(ScrollBarPolicy.NEVER);
        setId("plan");
        setAccessibleText("Plan at the bench");
    }

    /** A step's clock on the card. */
    private final class Clock extends HBox {
        private final Countdown countdown;
        private final Label time = new Label();
        private final Button start = new Button("Start");
        private final String step;

        Clock(String step, double seconds) {
            super(8);
            this.step = step;
            countdown = new Countdown(seconds, nanoTime);
            setAlignment(Pos.CENTER_RIGHT);
            time.getStyleClass().add("clock");
            time.setMinWidth(Region.USE_PREF_SIZE);
            Button reset = new Button("Set back");
            reset.setAccessibleText("Set the clock of " + step + " back");
            start.setMinWidth(72);
            reset.setMinWidth(Region.USE_PREF_SIZE);
            start.setOnAction(pressed -> {
                if (countdown.isRunning()) {
                    countdown.stop();
                } else {
                    countdown.start();
                }
                tick();
            });
            reset.setOnAction(pressed -> {
                countdown.reset();
                tick();
            });
            getChildren().addAll(time, start, reset);
            tick();
        }

        void tick() {
            boolean over = countdown.isOver();
            time.setText(over ? "time is up  " + countdown.words() : countdown.words());
            time.getStyleClass().remove("over");
            if (over) {
                time.getStyleClass().add("over");
            }
            start.setText(countdown.isRunning() ? "Stop" : countdown.hasBegun() ? "Go on" : "Start");
            start.setAccessibleText(start.getText() + " the clock of " + step);
        }
    }

    /** Moves the clocks on; call it a few times a second. */
    void tick() {
        clocks.forEach(Clock::tick);
    }

    /** Whether a clock runs: a plan must not be changed under it. */
    boolean isTiming() {
        return clocks.stream().anyMatch(clock -> clock.countdown.isRunning());
    }

    void show(String title, ExposurePlan plan) {
        if (plan.equals(shown) || isTiming()) {
            return;
        }
        shown = plan;
        clocks.clear();
        Label heading = new Label(title);
        heading.getStyleClass().add("heading");
        heading.setWrapText(true);
        Label caution = words(plan.caution(), "strong");
        card.getChildren().setAll(heading, words(plan.summary(), "quiet"), caution);
        VBox.setMargin(caution, new javafx.geometry.Insets(8, 0, 16, 0));
        plan.steps().forEach(step -> card.getChildren().add(step(step)));
    }

    private static Label words(String text, String style) {
        Label label = new Label(text);
        label.getStyleClass().add(style);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        return label;
    }

    private VBox step(ExposurePlan.Step step) {
        Label title = words(step.title(), "heading");
        HBox.setHgrow(title, Priority.ALWAYS);
        title.setMaxWidth(Double.MAX_VALUE);
        HBox head = new HBox(16, title);
        head.setAlignment(Pos.CENTER_LEFT);
        if (step.seconds() > 0) {
            Clock clock = new Clock(step.title().toLowerCase(Locale.ROOT), step.seconds());
            clock.setMinWidth(Region.USE_PREF_SIZE);
            clocks.add(clock);
            head.getChildren().add(clock);
        }
        VBox box = new VBox(6, head);
        box.getStyleClass().add("step");
        GridPane lines = new GridPane();
        lines.setHgap(16);
        lines.setVgap(2);
        int row = 0;
        for (ExposurePlan.Line line : step.lines()) {
            if (line.value().isEmpty()) {
                Label table = new Label(line.label());
                table.setStyle("-fx-font-family: monospace;");
                table.setMinWidth(Region.USE_PREF_SIZE);
                lines.add(table, 0, row++, 3, 1);
                continue;
            }
            Label value = words(line.value().replaceAll("(?<=[0-9]) um\\b", " \u00b5m"), "strong");
            String known = (line.restsOnAssumption() ? "\u25cb " : "") + line.provenance();
            lines.addRow(row++, words(line.label(), "quiet"), value, words(known, "quiet"));
        }
        box.getChildren().add(lines);
        step.warnings().forEach(warning -> box.getChildren().add(words("! " + warning, "fault")));
        step.advice().forEach(advice -> box.getChildren().add(words(advice, "words")));
        step.cautions().forEach(care -> box.getChildren().add(words("\u26a0 " + care, "strong")));
        return box;
    }
}
