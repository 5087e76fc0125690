package greyground.desk.plan;

import greyground.desk.clock.BenchClocks;
import greyground.desk.look.Controls;
import greyground.desk.model.DeskWords;
import greyground.plan.ExposurePlan;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One step of the wall card: its cautions, its numbers, and its clock where time counts. */
final class StepCard extends VBox {
    private final Optional<ClockLine> line;

    /** The small clock at a step's head. */
    private static final class ClockLine extends HBox {
        private final BenchClocks.StepClock clock;
        private final Label time = Controls.label("", "clock");
        private final Button start;

        ClockLine(BenchClocks.StepClock clock, Runnable moved) {
            super(8);
            this.clock = clock;
            start = ClockFace.start(clock, "Start this clock, stop it, or continue it (Space)", moved);
            setAlignment(Pos.CENTER_RIGHT);
            getChildren().addAll(time, start, ClockFace.back(clock, moved));
            setMinWidth(Region.USE_PREF_SIZE);
            tick();
        }

        void tick() {
            boolean over = clock.isOver();
            time.setText(over ? "time is up  " + clock.words() : clock.words());
            Controls.look(time, "over", over);
            ClockFace.name(start, clock);
        }
    }

    /** What is said under another title, without a clock. */
    StepCard(String title, ExposurePlan.Step step) {
        this(title, step, Optional.empty());
    }

    StepCard(ExposurePlan.Step step, Optional<BenchClocks.StepClock> clock, Runnable moved) {
        this(step.title(), step, clock.map(each -> new ClockLine(each, moved)));
    }

    private StepCard(String title, ExposurePlan.Step step, Optional<ClockLine> line) {
        super(6);
        this.line = line;
        getStyleClass().add("step");
        HBox head = Controls.line(16, Controls.growing(Controls.wrapped(title, "heading")));
        line.ifPresent(each -> head.getChildren().add(each));
        getChildren().add(head);
        step.cautions().forEach(care -> getChildren().add(Controls.wrapped(ClockFace.CARE + care, "strong")));
        getChildren().add(lines(step));
        step.warnings().forEach(warning -> getChildren().add(Controls.wrapped("! " + DeskWords.of(warning), "fault")));
        step.advice().forEach(advice -> getChildren().add(Controls.wrapped(DeskWords.of(advice), "words")));
    }

    private static GridPane lines(ExposurePlan.Step step) {
        GridPane lines = new GridPane();
        lines.setHgap(16);
        lines.setVgap(2);
        for (int column = 0; column < 2; column++) {
            ColumnConstraints narrow = new ColumnConstraints();
            narrow.setMinWidth(120);
            lines.getColumnConstraints().add(narrow);
        }
        int row = 0;
        for (ExposurePlan.Line line : step.lines()) {
            if (line.value().isEmpty()) {
                lines.add(Controls.label(line.label(), "table"), 0, row++, 3, 1);
                continue;
            }
            String known = (line.restsOnAssumption() ? "\u25cb " : "") + line.provenance();
            lines.addRow(
                    row++,
                    Controls.wrapped(line.label(), "quiet"),
                    Controls.wrapped(line.value(), "strong"),
                    Controls.wrapped(known, "quiet"));
        }
        return lines;
    }

    void tick() {
        line.ifPresent(ClockLine::tick);
    }

    boolean focusClock() {
        line.ifPresent(each -> each.start.requestFocus());
        return line.isPresent();
    }
}
