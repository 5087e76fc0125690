package greyground.desk.plan;

import greyground.desk.model.BenchClocks;
import greyground.desk.model.DeskWords;
import greyground.plan.ExposurePlan;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One step of the wall card: its numbers, its cautions, and its clock where time counts. */
final class StepCard extends VBox {
    private final Optional<ClockLine> line;

    /** The small clock at a step's head. */
    private static final class ClockLine extends HBox {
        private final BenchClocks.StepClock clock;
        private final Label time = new Label();
        private final Button start = new Button("Start");

        ClockLine(BenchClocks.StepClock clock, Runnable moved) {
            super(8);
            this.clock = clock;
            setAlignment(Pos.CENTER_RIGHT);
            time.getStyleClass().add("clock");
            time.setMinWidth(Region.USE_PREF_SIZE);
            Button back = new Button("Set back");
            back.setAccessibleText("Set the clock of " + clock.step() + " back");
            back.setTooltip(new Tooltip("The whole time again; the clock stands"));
            back.setMinWidth(Region.USE_PREF_SIZE);
            back.setOnAction(pressed -> {
                clock.setBack();
                moved.run();
            });
            start.setMinWidth(72);
            start.setTooltip(new Tooltip("Start this clock, stop it, or let it go on (Space)"));
            start.setOnAction(pressed -> {
                clock.startOrStop();
                moved.run();
            });
            getChildren().addAll(time, start, back);
            setMinWidth(Region.USE_PREF_SIZE);
            tick();
        }

        void tick() {
            boolean over = clock.isOver();
            time.setText(over ? "time is up  " + clock.words() : clock.words());
            time.getStyleClass().remove("over");
            if (over) {
                time.getStyleClass().add("over");
            }
            start.setText(clock.act());
            start.setAccessibleText(clock.act() + " the clock of " + clock.step());
        }
    }

    /**
     * A step.
     *
     * @param moved hears of a clock that was started, stopped or set back
     */
    StepCard(ExposurePlan.Step step, Optional<BenchClocks.StepClock> clock, Runnable moved) {
        super(6);
        getStyleClass().add("step");
        Label title = PlanWords.line(step.title(), "heading");
        HBox.setHgrow(title, Priority.ALWAYS);
        title.setMaxWidth(Double.MAX_VALUE);
        HBox head = new HBox(16, title);
        head.setAlignment(Pos.CENTER_LEFT);
        line = clock.map(each -> new ClockLine(each, moved));
        line.ifPresent(each -> head.getChildren().add(each));
        getChildren().addAll(head, lines(step));
        step.warnings().forEach(warning -> getChildren().add(PlanWords.line("! " + DeskWords.of(warning), "fault")));
        step.advice().forEach(advice -> getChildren().add(PlanWords.line(DeskWords.of(advice), "words")));
        step.cautions().forEach(care -> getChildren().add(PlanWords.line(PlanWords.CARE + care, "strong")));
    }

    private static GridPane lines(ExposurePlan.Step step) {
        GridPane lines = new GridPane();
        lines.setHgap(16);
        lines.setVgap(2);
        ColumnConstraints narrow = new ColumnConstraints();
        narrow.setMinWidth(120);
        ColumnConstraints middle = new ColumnConstraints();
        middle.setMinWidth(120);
        lines.getColumnConstraints().addAll(narrow, middle);
        int row = 0;
        for (ExposurePlan.Line line : step.lines()) {
            if (line.value().isEmpty()) {
                Label table = new Label(line.label());
                table.getStyleClass().add("table");
                table.setMinWidth(Region.USE_PREF_SIZE);
                lines.add(table, 0, row++, 3, 1);
                continue;
            }
            Label value = PlanWords.line(line.value(), "strong");
            String known = (line.restsOnAssumption() ? "\u25cb " : "") + line.provenance();
            lines.addRow(row++, PlanWords.line(line.label(), "quiet"), value, PlanWords.line(known, "quiet"));
        }
        return lines;
    }

    void tick() {
        line.ifPresent(ClockLine::tick);
    }

    /** Gives the keys to the clock, if there is one. */
    boolean focusClock() {
        line.ifPresent(each -> each.start.requestFocus());
        return line.isPresent();
    }
}
