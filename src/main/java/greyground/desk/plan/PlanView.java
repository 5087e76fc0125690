package greyground.desk.plan;

import greyground.desk.clock.BenchClocks;
import greyground.desk.look.Controls;
import greyground.desk.look.Freshness;
import greyground.desk.look.NoteField;
import greyground.desk.model.BenchModel;
import greyground.desk.model.BenchNotes;
import greyground.desk.model.DeskWords;
import greyground.desk.model.LiveDesk;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import javafx.geometry.Bounds;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextInputControl;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The plan as a wall card: running clocks at its head, the numbers that matter, every step in order with its clock and its notes, and the bite log. */
public final class PlanView extends VBox {
    private static final double WIDEST = 860;
    private static final int ALL = -1;

    private final BenchModel model;
    private final BenchClocks clocks;
    private final Runnable moved;
    private final Consumer<String> say;
    private final ClockFace face;
    private final VBox card = new VBox(0);
    private final ScrollPane scroll;
    private final NoteField ofPlate;
    private final BiteLogView log;
    private final List<StepCard> cards = new ArrayList<>();
    private final List<Node> opening = new ArrayList<>();
    private int at = ALL;
    private final ToggleButton oneStep = Controls.toggle(
            "One step at a time", "plan-one-step", "One step fills the page; Page Up and Page Down turn it");
    private final Button before =
            Controls.button("Before", "plan-before", "The step before (Page Up)", () -> turnTo(at - 1));
    private final Button next = Controls.button("Next", "plan-next", "The next step (Page Down)", () -> turnTo(at + 1));
    private boolean bitten;
    private final Map<String, NoteField> notes = new HashMap<>();
    private final Freshness freshness = new Freshness(card::setOpacity);
    private @Nullable ExposurePlan shown;
    private String shownTitle = "";

    public PlanView(BenchModel model, LiveDesk live, BenchClocks clocks, Runnable moved, Consumer<String> say) {
        this.model = model;
        this.say = say;
        this.clocks = clocks;
        this.moved = moved;
        this.face = new ClockFace(this, moved);
        this.ofPlate = note("Note on this plate", "note-plate", BenchNotes::withPlate);
        this.log = new BiteLogView(model, live);
        card.getStyleClass().add("card");
        card.setMaxWidth(WIDEST);
        HBox middle = new HBox(card);
        middle.setAlignment(Pos.TOP_CENTER);
        HBox.setHgrow(card, Priority.ALWAYS);
        scroll = Controls.rolling(middle);
        scroll.setFocusTraversable(true);
        scroll.setId("plan-card");
        scroll.setAccessibleText("Plan at the bench");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        setId("plan");
        getStyleClass().add("plan");
        HBox turning = Controls.line(16, oneStep, Controls.growing(new Region()), before, next);
        turning.getStyleClass().add("turning");
        oneStep.setOnAction(pressed -> turnTo(oneStep.isSelected() ? 0 : ALL));
        getChildren().addAll(face, scroll, turning);
        setOnKeyPressed(key -> {
            if (at != ALL && (key.getCode() == KeyCode.PAGE_DOWN || key.getCode() == KeyCode.PAGE_UP)) {
                turnTo(at + (key.getCode() == KeyCode.PAGE_DOWN ? 1 : -1));
                key.consume();
                return;
            }
            boolean taken = key.getTarget() instanceof TextInputControl
                    || key.getTarget() instanceof ButtonBase
                    || key.getTarget() instanceof ComboBox;
            if (key.getCode() == KeyCode.SPACE && !taken) {
                startOrStop();
                key.consume();
            }
        });
        sceneProperty().addListener((property, was, is) -> {
            if (is != null) {
                is.focusOwnerProperty().addListener((owner, before, now) -> reveal(now));
            }
        });
    }

    private NoteField note(String what, String id, BiFunction<BenchNotes, String, BenchNotes> written) {
        return new NoteField(what, id, words -> write(what, id, notes -> written.apply(notes, words)), model::letGo);
    }

    private void write(String what, String id, UnaryOperator<BenchNotes> change) {
        try {
            model.note(what.toLowerCase(Locale.ROOT), "write " + id, change);
        } catch (Refusal refused) {
            say.accept(String.valueOf(refused.getMessage()));
            refresh();
        }
    }

    /** Scrolls to what has the keys. */
    private void reveal(@Nullable Node focused) {
        if (focused == null || !Controls.within(focused, card)) {
            return;
        }
        double whole = card.getBoundsInLocal().getHeight();
        double seen = scroll.getViewportBounds().getHeight();
        if (whole <= seen) {
            return;
        }
        Bounds bounds = card.sceneToLocal(focused.localToScene(focused.getBoundsInLocal()));
        double top = bounds.getMinY();
        double bottom = bounds.getMaxY();
        double from = scroll.getVvalue() * (whole - seen);
        if (top < from + 16) {
            scroll.setVvalue(Math.max(0, (top - 64) / (whole - seen)));
        } else if (bottom > from + seen - 16) {
            scroll.setVvalue(Math.min(1, (bottom - seen + 64) / (whole - seen)));
        }
    }

    /** Starts or stops the clock that matters most: the one that runs, or the plan's first. */
    private void startOrStop() {
        Optional<BenchClocks.StepClock> begun =
                clocks.begun().stream().filter(clock -> !clock.isOver()).findFirst();
        begun.or(() -> clocks.all().stream().findFirst()).ifPresent(clock -> {
            clock.startOrStop();
            moved.run();
        });
    }

    /** Moves the clocks on; call it a few times a second. */
    public void tick() {
        face.show(clocks.begun());
        cards.forEach(StepCard::tick);
    }

    /** Gives the keys to the first clock, or the card; a plan that hasn't begun is seen from its beginning. */
    public void focusFirst() {
        if (cards.stream().noneMatch(StepCard::focusClock)) {
            scroll.requestFocus();
        }
        if (clocks.begun().isEmpty()) {
            scroll.setVvalue(0);
        }
    }

    /** Shows the notes and the log of the model again. */
    public void refresh() {
        BenchNotes present = model.notes();
        ofPlate.show(present.plate());
        notes.forEach((step, field) -> field.show(present.steps().getOrDefault(step, "")));
        log.refresh();
    }

    /** Something has changed: the steps are of before. */
    public void stale() {
        freshness.stale();
    }

    public void show(String title, ExposurePlan plan) {
        freshness.fresh();
        if (plan.equals(shown) && title.equals(shownTitle)) {
            refresh();
            return;
        }
        shown = plan;
        shownTitle = title;
        clocks.plan(title, plan);
        cards.clear();
        notes.clear();
        Label caution = Controls.wrapped(plan.caution(), "strong");
        VBox.setMargin(caution, new Insets(8, 0, 8, 0));
        VBox.setMargin(ofPlate, new Insets(0, 0, 16, 0));
        opening.clear();
        opening.addAll(List.of(
                Controls.wrapped(title.isEmpty() ? "Plan" : title, "heading"),
                Controls.wrapped(DeskWords.of(plan.summary()), "quiet"),
                new BenchNumbers(plan.card()),
                caution,
                ofPlate));
        bitten = false;
        for (ExposurePlan.Step step : plan.steps()) {
            StepCard made = new StepCard(step, clocks.of(step.title()), moved);
            String name = step.title().toLowerCase(Locale.ROOT);
            NoteField field = note(
                    "Note: " + name,
                    "note-" + name.replaceAll("[^a-z]+", "-"),
                    (present, words) -> present.withStep(step.title(), words));
            made.getChildren().add(field);
            notes.put(step.title(), field);
            cards.add(made);
            bitten |= step.title().startsWith("Bite");
        }
        turnTo(Math.min(at, cards.size() - 1));
        refresh();
        tick();
    }

    /** Shows one step, or all of the plan. */
    private void turnTo(int wanted) {
        at = wanted == ALL ? ALL : Math.max(0, Math.min(cards.size() - 1, wanted));
        oneStep.setSelected(at != ALL);
        Controls.look(card, "one", at != ALL);
        Controls.show(before, at != ALL);
        Controls.show(next, at != ALL);
        card.getChildren().clear();
        if (at == ALL) {
            card.getChildren().addAll(opening);
            card.getChildren().addAll(cards);
            if (bitten) {
                card.getChildren().add(log);
            }
        } else if (!cards.isEmpty()) {
            List<ExposurePlan.Step> steps = shown == null ? List.of() : shown.steps();
            card.getChildren().add(cards.get(at));
            if (bitten && steps.get(at).title().startsWith("Bite")) {
                card.getChildren().add(log);
            }
            before.setDisable(at == 0);
            next.setDisable(at == cards.size() - 1);
            next.setText(
                    at == cards.size() - 1
                            ? "Last step"
                            : "Next: " + steps.get(at + 1).title());
            Label count = Controls.label("Step " + (at + 1) + " of " + cards.size(), "quiet");
            card.getChildren().add(0, count);
        }
        scroll.setVvalue(0);
    }
}
