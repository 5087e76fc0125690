package greyground.desk.plan;

import greyground.app.bite.LoggedProof;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchNotes;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskWords;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.ProofWords;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import javafx.geometry.Pos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The bite log on the wall card: what each proof showed, and what further minutes would do. */
final class BiteLogView extends VBox {
    private final BenchModel model;
    private final LiveDesk live;
    private final VBox list = new VBox(4);
    private final TextField minutes = new TextField();
    private final ComboBox<ProofWords.Kind> kind = new ComboBox<>();
    private final TextField measured = new TextField();
    private final Label fault = PlanWords.line("", "fault");
    private final Button ask = new Button("What would more minutes do?");
    private final ProgressBar bar = new ProgressBar(0);
    private final Button stop = new Button("Stop");
    private final VBox answer = new VBox();
    private final Label old = PlanWords.line("Something has changed since this was worked out: ask again.", "strong");
    private List<LoggedProof> shown = List.of();
    private Optional<BenchState> answered = Optional.empty();
    private Optional<BenchState> asked = Optional.empty();

    BiteLogView(BenchModel model, LiveDesk live) {
        super(8);
        this.model = model;
        this.live = live;
        setId("bite-log");
        getStyleClass().add("step");
        minutes.setId("proof-minutes");
        minutes.getStyleClass().add("number");
        minutes.setAccessibleText("Minutes in the bath until this proof");
        minutes.setTooltip(new Tooltip("All bites together, from the first minute in the bath"));
        kind.setId("proof-kind");
        kind.getItems().setAll(ProofWords.Kind.values());
        kind.setConverter(new javafx.util.StringConverter<>() {
            @Override
            public String toString(ProofWords.Kind each) {
                return each == null ? "" : each.label();
            }

            @Override
            public ProofWords.Kind fromString(String label) {
                return ProofWords.Kind.LIGHTNESS;
            }
        });
        kind.setAccessibleText("What was measured");
        kind.setTooltip(new Tooltip("What was measured on this proof"));
        kind.valueProperty().addListener((property, was, is) -> measured.setPromptText("such as " + is.example()));
        kind.setValue(ProofWords.Kind.LIGHTNESS);
        measured.setId("proof-measured");
        measured.setAccessibleText("What was measured: film coverage in percent and tone, in pairs; or a depth");
        measured.setTooltip(new Tooltip("Film coverage in percent and what the proof measures there, in pairs"));
        measured.setOnAction(entered -> add());
        HBox.setHgrow(measured, Priority.ALWAYS);
        Button add = new Button("Add proof");
        add.setId("add-proof");
        add.setMinWidth(Region.USE_PREF_SIZE);
        add.setTooltip(new Tooltip("Take this proof into the log; it is kept with the job"));
        add.setOnAction(pressed -> add());
        HBox when = new HBox(8, words("Proof after"), minutes, words("min, measured"), kind);
        when.setAlignment(Pos.CENTER_LEFT);
        HBox what = new HBox(8, measured, add);
        what.setAlignment(Pos.CENTER_LEFT);
        ask.setId("ask-log");
        ask.setMinWidth(Region.USE_PREF_SIZE);
        ask.setTooltip(new Tooltip("How fast the bath bites this plate, and what further minutes would print"));
        ask.setOnAction(pressed -> work());
        bar.setAccessibleText("Progress of the bite log");
        bar.setPrefWidth(160);
        stop.setId("stop-log");
        stop.setMinWidth(Region.USE_PREF_SIZE);
        stop.setTooltip(new Tooltip("Stop working it out"));
        stop.setAccessibleText("Stop working out the bite log");
        stop.setOnAction(pressed -> {
            live.stopBiteLog();
            working(false);
        });
        HBox asking = new HBox(8, ask, bar, stop);
        asking.setAlignment(Pos.CENTER_LEFT);
        getChildren()
                .addAll(
                        PlanWords.line("Bite log", "heading"),
                        PlanWords.line(
                                "Write down every proof: minutes in the bath so far, and two or more tones of it or the"
                                        + " copper's depth. Two proofs tell whether the bath slows.",
                                "words"),
                        list,
                        when,
                        what,
                        fault,
                        asking,
                        old,
                        answer);
        show(fault, false);
        show(old, false);
        working(false);
        addEventHandler(KeyEvent.KEY_PRESSED, key -> {
            if (key.getCode() == KeyCode.ENTER && key.getTarget() == minutes) {
                measured.requestFocus();
                key.consume();
            }
        });
    }

    private static Label words(String text) {
        Label label = new Label(text);
        label.setMinWidth(Region.USE_PREF_SIZE);
        return label;
    }

    private static void show(Region node, boolean wanted) {
        node.setVisible(wanted);
        node.setManaged(wanted);
    }

    private void working(boolean yes) {
        show(bar, yes);
        show(stop, yes);
        ask.setDisable(yes || shown.isEmpty());
    }

    private void say(String words) {
        fault.setText(words);
        show(fault, !words.isEmpty());
    }

    private void add() {
        try {
            LoggedProof proof = ProofWords.read(minutes.getText(), kind.getValue(), measured.getText());
            model.note("proof after " + Refusal.plain(proof.minutes()) + " min", "", notes -> notes.withProof(proof));
            minutes.clear();
            measured.clear();
            say("");
            minutes.requestFocus();
        } catch (Refusal refused) {
            say(DeskWords.of(String.valueOf(refused.getMessage())));
        }
    }

    /** Shows the model's log again. */
    void refresh() {
        List<LoggedProof> proofs = model.notes().proofs();
        if (!proofs.equals(shown)) {
            shown = proofs;
            list.getChildren().clear();
            proofs.forEach(proof -> list.getChildren().add(row(proof)));
        }
        if (bar.isVisible() && !asked.equals(model.state().map(BiteLogView::deciding))) {
            live.stopBiteLog();
            working(false);
            say("Stopped, since something has changed: ask again.");
        }
        ask.setDisable(bar.isVisible() || proofs.isEmpty());
        show(
                old,
                !answer.getChildren().isEmpty()
                        && !answered.equals(model.state().map(BiteLogView::deciding)));
    }

    /** What decides the answer: notes on the steps don't. */
    private static BenchState deciding(BenchState state) {
        BenchNotes log = new BenchNotes(
                "", new java.util.TreeMap<>(), BenchNotes.of(state.job()).proofs());
        return new BenchState(state.art(), state.source(), log.in(BenchNotes.without(state.job())), state.workshop());
    }

    private HBox row(LoggedProof proof) {
        String words = ProofWords.of(proof);
        Label said =
                PlanWords.line(words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1), "strong");
        said.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(said, Priority.ALWAYS);
        Button remove = new Button("Remove");
        remove.setMinWidth(Region.USE_PREF_SIZE);
        remove.setAccessibleText("Remove the proof " + words);
        remove.setTooltip(new Tooltip("Take this proof out of the log"));
        remove.setOnAction(pressed -> {
            ask.requestFocus();
            model.note("proof removed", "", notes -> notes.withoutProof(proof));
        });
        HBox row = new HBox(16, said, remove);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    private void work() {
        say("");
        bar.setProgress(0);
        working(true);
        stop.requestFocus();
        asked = model.state().map(BiteLogView::deciding);
        live.biteLog(shown, new LiveDesk.Told<>() {
            @Override
            public void progress(double done) {
                bar.setProgress(done);
            }

            @Override
            public void done(ExposurePlan.Step step) {
                working(false);
                answered = asked;
                answer.getChildren().setAll(new StepCard(titled(step), Optional.empty(), () -> {}));
                refresh();
            }

            @Override
            public void failed(String words) {
                working(false);
                say(DeskWords.of(words));
            }
        });
    }

    private static ExposurePlan.Step titled(ExposurePlan.Step step) {
        return new ExposurePlan.Step(
                "What more minutes would do", 0, step.lines(), step.warnings(), step.advice(), step.cautions());
    }
}
