package greyground.desk.plan;

import greyground.app.bite.LoggedProof;
import greyground.desk.look.Controls;
import greyground.desk.look.WorkBar;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchNotes;
import greyground.desk.model.BenchState;
import greyground.desk.model.DeskWords;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.LongWork;
import greyground.desk.model.ProofWords;
import greyground.quantity.Refusal;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;

/** The bite log on the wall card: what each proof showed, and what further minutes would do. */
final class BiteLogView extends VBox {
    private final BenchModel model;
    private final LiveDesk live;
    private final VBox list = new VBox(4);
    private final TextField minutes = Controls.field(
            "proof-minutes",
            "Minutes in the bath until this proof",
            "All bites together, from the first minute in the bath",
            "number");
    private final ComboBox<ProofWords.Kind> kind = Controls.named(
            Controls.choice(ProofWords.Kind::label),
            "proof-kind",
            "What was measured",
            "What was measured on this proof");
    private final TextField measured = Controls.named(
            new TextField(),
            "proof-measured",
            "What was measured: film coverage in percent and tone, in pairs; or a depth",
            "Film coverage in percent and what the proof measures there, in pairs");
    private final Label fault = Controls.wrapped("", "fault");
    private final Button ask = Controls.button(
            "What would more minutes do?",
            "ask-log",
            "How fast the bath bites this plate, and what further minutes would print",
            this::work);
    private final WorkBar bar = new WorkBar("working out the bite log", "stop-log", this::stop);
    private final VBox answer = new VBox();
    private final Label old = Controls.wrapped("Something has changed since this was worked out: ask again.", "strong");
    private List<LoggedProof> shown = List.of();
    private Optional<BenchState> answered = Optional.empty();
    private Optional<BenchState> asked = Optional.empty();

    BiteLogView(BenchModel model, LiveDesk live) {
        super(8);
        this.model = model;
        this.live = live;
        setId("bite-log");
        getStyleClass().add("step");
        minutes.setOnAction(entered -> measured.requestFocus());
        kind.getItems().setAll(ProofWords.Kind.values());
        kind.valueProperty().addListener((property, was, is) -> measured.setPromptText("such as " + is.example()));
        kind.setValue(ProofWords.Kind.LIGHTNESS);
        measured.setOnAction(entered -> add());
        Button add = Controls.button(
                "Add proof", "add-proof", "Take this proof into the log; it is kept with the job", this::add);
        String what = "Write down every proof: minutes in the bath so far, and two or more tones of it or the"
                + " copper's depth. Two proofs tell whether the bath slows.";
        getChildren()
                .addAll(
                        Controls.wrapped("Bite log", "heading"),
                        Controls.wrapped(what, "words"),
                        list,
                        Controls.line(8, Controls.label("Proof after"), minutes, Controls.label("min, measured"), kind),
                        Controls.line(8, Controls.growing(measured), add),
                        fault,
                        Controls.line(8, ask, bar),
                        old,
                        answer);
        say("");
        Controls.show(old, false);
        working(false);
    }

    private void working(boolean yes) {
        bar.show(yes);
        ask.setDisable(yes || shown.isEmpty());
    }

    private void stop() {
        live.stopBiteLog();
        working(false);
    }

    private void say(String words) {
        fault.setText(DeskWords.of(words));
        Controls.show(fault, !words.isEmpty());
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
            say(String.valueOf(refused.getMessage()));
        }
    }

    /** Shows the model's log again. */
    void refresh() {
        List<LoggedProof> proofs = model.notes().proofs();
        if (!proofs.equals(shown)) {
            shown = proofs;
            list.getChildren().setAll(proofs.stream().map(this::row).toList());
        }
        Optional<BenchState> present = model.state().map(BiteLogView::deciding);
        if (bar.isVisible() && !asked.equals(present)) {
            stop();
            say("Stopped, since something has changed: ask again.");
        }
        working(bar.isVisible());
        Controls.show(old, !answer.getChildren().isEmpty() && !answered.equals(present));
    }

    /** What decides the answer: notes on the steps don't. */
    private static BenchState deciding(BenchState state) {
        BenchNotes log =
                new BenchNotes("", new TreeMap<>(), BenchNotes.of(state.job()).proofs());
        return state.with(job -> log.in(BenchNotes.without(job)));
    }

    private HBox row(LoggedProof proof) {
        String words = ProofWords.of(proof);
        Button remove = Controls.button("Remove", "remove-proof", "Take this proof out of the log", () -> {
            ask.requestFocus();
            model.note("proof removed", "", notes -> notes.withoutProof(proof));
        });
        remove.setAccessibleText("Remove the proof " + words);
        return Controls.line(16, Controls.growing(Controls.wrapped(DeskWords.of(words), "strong")), remove);
    }

    private void work() {
        say("");
        bar.progress(0, "");
        working(true);
        bar.focusStop();
        asked = model.state().map(BiteLogView::deciding);
        live.biteLog(
                shown,
                new LongWork.News<>(
                        done -> bar.progress(done, ""),
                        step -> {
                            working(false);
                            answered = asked;
                            answer.getChildren().setAll(new StepCard("What more minutes would do", step));
                            refresh();
                        },
                        words -> {
                            working(false);
                            say(words);
                        },
                        () -> working(false)));
    }
}
