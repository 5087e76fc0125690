package greyground.desk.window;

import greyground.app.print.FilmPrinting.Order;
import greyground.app.print.PrinterAtHand;
import greyground.app.print.PrintersAtHand;
import greyground.desk.model.DeskWords;
import greyground.desk.model.LongWork;
import greyground.desk.model.PrintSource;
import greyground.desk.model.PrintingModel;
import greyground.film.sheet.PrintPaper;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;
import org.jspecify.annotations.Nullable;

/** A strip at the window's head that prints one film: which printer, which paper, how many; then how far it is, and Stop. */
final class PrintingStrip extends VBox {
    private final PrintersAtHand printers;
    private final Consumer<String> say;
    private final ComboBox<PrinterAtHand> printer = new ComboBox<>();
    private final ComboBox<PrintPaper> paper = new ComboBox<>();
    private final TextField copies = new TextField("1");
    private final ToggleButton plan = new ToggleButton("With the plan");
    private final Button print = button("Print", "print-now");
    private final Button leave = button("Don't print", "print-not");
    private final Label words = new Label();
    private final ProgressBar bar = new ProgressBar(0);
    private final HBox choices;
    private @Nullable PrintingModel model;
    private @Nullable PrintSource source;
    private final LongWork looking;
    private final LongWork work;
    private boolean filling;

    /**
     * A strip that is not seen yet.
     *
     * @param window runs on the window's thread
     * @param say hears one line at the end
     */
    PrintingStrip(PrintersAtHand printers, Executor window, Consumer<String> say) {
        super(8);
        this.printers = printers;
        this.looking = new LongWork("search for printers", window);
        this.work = new LongWork("print", window);
        this.say = say;
        getStyleClass().add("question");
        setId("printing");
        printer.setId("print-printer");
        printer.setAccessibleText("Printer");
        printer.setMaxWidth(280);
        printer.setOnAction(chosen -> take(model == null ? null : printer.getValue(), PrintingModel::choose));
        paper.setId("print-paper");
        paper.setAccessibleText("Paper");
        paper.setMaxWidth(280);
        paper.setConverter(new PaperWords());
        paper.setOnAction(chosen -> take(paper.getValue(), PrintingModel::choose));
        copies.setId("print-copies");
        copies.setAccessibleText("Copies");
        copies.getStyleClass().add("number");
        copies.setMinWidth(56);
        copies.setPrefWidth(56);
        copies.textProperty().addListener((what, was, is) -> take(is, PrintingModel::tellCopies));
        plan.setId("print-plan");
        plan.setMinWidth(Region.USE_PREF_SIZE);
        plan.setOnAction(pressed -> take(plan.isSelected(), PrintingModel::addPlan));
        print.getStyleClass().add("main");
        print.setOnAction(pressed -> start());
        leave.setOnAction(pressed -> leave());
        bar.setPrefWidth(200);
        bar.setAccessibleText("Progress of the printing");
        words.setId("print-words");
        words.setWrapText(true);
        words.setMinHeight(Region.USE_PREF_SIZE);
        Region gap = new Region();
        HBox.setHgrow(gap, Priority.ALWAYS);
        choices = new HBox(8, label("Printer"), printer, label("Paper"), paper, label("Copies"), copies, plan);
        choices.setAlignment(Pos.CENTER_LEFT);
        HBox line = new HBox(8, choices, bar, gap, print, leave);
        line.setAlignment(Pos.CENTER_LEFT);
        getChildren().addAll(line, words);
        setOnKeyPressed(key -> {
            if (key.getCode() == KeyCode.ESCAPE) {
                leave();
                key.consume();
            }
        });
        seen(false);
    }

    private static Button button(String label, String id) {
        Button button = new Button(label);
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        return button;
    }

    private static Label label(String label) {
        Label made = new Label(label);
        made.setMinWidth(Region.USE_PREF_SIZE);
        return made;
    }

    private void seen(boolean wanted) {
        setVisible(wanted);
        setManaged(wanted);
    }

    private void show(Node node, boolean wanted) {
        node.setVisible(wanted);
        node.setManaged(wanted);
    }

    boolean isWorking() {
        return work.isRunning();
    }

    /** Shows the strip for a test plate's film, or says why it can't be printed. */
    void openTestFilm(Path pdf) {
        try {
            open(PrintSource.of(pdf, String.valueOf(pdf.getFileName())));
        } catch (Refusal unreadable) {
            say.accept(String.valueOf(unreadable.getMessage()));
        }
    }

    /** Shows the strip for a film; printers are looked for meanwhile. */
    void open(PrintSource film) {
        if (isWorking()) {
            say.accept("a film is being printed: wait for it, or stop it first");
            return;
        }
        say.accept("");
        source = film;
        model = null;
        show(choices, false);
        show(bar, false);
        print.setDisable(true);
        leave.setText("Don't print");
        say("Looking for printers", false);
        seen(true);
        leave.requestFocus();
        looking.start(progress -> printers.find(), new Ending<>(found -> found(film, found)));
    }

    private void found(PrintSource film, List<PrinterAtHand> found) {
        model = new PrintingModel(film.size(), found);
        show(choices, !found.isEmpty());
        show(plan, film.hasPlan());
        filling = true;
        printer.getItems().setAll(found);
        plan.setSelected(false);
        copies.setText("1");
        filling = false;
        refresh();
        (found.isEmpty() ? leave : printer).requestFocus();
    }

    /** Tells the model of a choice, unless it is the model that has just been shown. */
    private <T> void take(@Nullable T chosen, java.util.function.BiConsumer<PrintingModel, T> told) {
        PrintingModel present = model;
        if (filling || present == null || chosen == null) {
            return;
        }
        try {
            told.accept(present, chosen);
            refresh();
        } catch (Refusal refused) {
            say(String.valueOf(refused.getMessage()), true);
            print.setDisable(true);
        }
    }

    private void refresh() {
        PrintingModel present = model;
        if (present == null) {
            return;
        }
        filling = true;
        printer.setValue(present.printer().orElse(null));
        if (!paper.getItems().equals(present.papers())) {
            paper.getItems().setAll(present.papers());
        }
        paper.setValue(present.paper().orElse(null));
        filling = false;
        print.setDisable(present.refusal().isPresent());
        say(
                present.refusal().orElseGet(() -> "Film sheet " + present.sheet() + ". " + present.advice()),
                present.refusal().isPresent());
    }

    private void say(String line, boolean fault) {
        words.setText(DeskWords.of(line));
        words.getStyleClass().remove("fault");
        if (fault) {
            words.getStyleClass().add("fault");
        }
    }

    private void start() {
        PrintingModel present = model;
        PrintSource film = source;
        if (present == null || film == null || present.refusal().isPresent()) {
            return;
        }
        Order order = present.order();
        show(choices, false);
        show(bar, true);
        bar.setProgress(0);
        print.setDisable(true);
        leave.setText("Stop");
        leave.requestFocus();
        say("Printing on " + order.printer().name() + ", " + order.paper().name(), false);
        work.start(
                progress -> {
                    film.printing().print(order, progress);
                    return order.printer();
                },
                new Ending<>(printer -> {
                    seen(false);
                    say.accept("handed to " + printer.name()
                            + ": measure both 100 mm rulers on the film before you expose");
                }));
    }

    /** Leaves the strip, or stops what is being printed. */
    void leave() {
        if (work.isRunning()) {
            work.stop();
            say("Stopping", false);
        } else {
            looking.forget();
            source = null;
            seen(false);
        }
    }

    private final class Ending<T> implements LongWork.Listener<T> {
        private final Consumer<T> done;

        Ending(Consumer<T> done) {
            this.done = done;
        }

        @Override
        public void done(T made) {
            done.accept(made);
        }

        @Override
        public void progress(double done) {
            bar.setProgress(done);
        }

        @Override
        public void failed(String fault) {
            show(choices, model != null);
            show(bar, false);
            leave.setText("Don't print");
            print.setDisable(model == null);
            say(fault, true);
        }

        @Override
        public void stopped() {
            seen(false);
            say.accept("printing stopped; see whether the printer still holds a part of it");
        }
    }

    private final class PaperWords extends StringConverter<PrintPaper> {
        @Override
        public String toString(@Nullable PrintPaper each) {
            PrintingModel present = model;
            return each == null || present == null ? "" : present.words(each);
        }

        @Override
        public @Nullable PrintPaper fromString(String typed) {
            return null;
        }
    }
}
