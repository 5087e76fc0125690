package greyground.desk.window;

import greyground.app.print.FilmPrinting.Order;
import greyground.app.print.PrinterAtHand;
import greyground.app.print.PrintersAtHand;
import greyground.desk.look.Controls;
import greyground.desk.model.DeskWords;
import greyground.desk.model.LongWork;
import greyground.desk.model.Messages;
import greyground.desk.model.PrintSource;
import greyground.desk.model.PrintingModel;
import greyground.film.sheet.PrintPaper;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** A strip at the window's head that prints one film: which printer, which paper, how many; then how far it is, and Stop. */
final class PrintingStrip extends VBox {
    private final PrintersAtHand printers;
    private final Messages messages;
    private final ComboBox<PrinterAtHand> printer =
            Controls.named(Controls.choice(PrinterAtHand::name), "print-printer", "Printer", "What prints the film");
    private final ComboBox<PrintPaper> paper =
            Controls.named(Controls.choice(this::words), "print-paper", "Paper", "What the film is printed on");
    private final TextField copies = Controls.field("print-copies", "Copies", "A whole number from 1 to 99", "number");
    private final ToggleButton plan = Controls.toggle("With the plan", "print-plan", "Print the plan's pages, too");
    private final Button print = Controls.mainButton("Print", "print-now", "Print the film at true size", this::start);
    private final Button leave = Controls.button("Don't print", "print-not", "Put this away", this::leave);
    private final Label words = Controls.wrapped("");
    private final ProgressBar bar = Controls.progress("Progress of the printing", 200);
    private final HBox choices = Controls.line(
            8,
            Controls.label("Printer"),
            printer,
            Controls.label("Paper"),
            paper,
            Controls.label("Copies"),
            copies,
            plan);
    private final LongWork looking;
    private final LongWork work;
    private @Nullable PrintingModel model;
    private @Nullable PrintSource source;
    private boolean filling;

    PrintingStrip(PrintersAtHand printers, Executor window, Messages messages) {
        super(8);
        this.printers = printers;
        this.looking = new LongWork("search for printers", window);
        this.work = new LongWork("print", window);
        this.messages = messages;
        getStyleClass().add("strip");
        setId("printing");
        printer.setMaxWidth(280);
        printer.setOnAction(chosen -> take(printer.getValue(), PrintingModel::choose));
        paper.setMaxWidth(280);
        paper.setOnAction(chosen -> take(paper.getValue(), PrintingModel::choose));
        copies.setMinWidth(56);
        copies.setPrefWidth(56);
        copies.textProperty().addListener((what, was, is) -> take(is, PrintingModel::tellCopies));
        plan.setOnAction(pressed -> take(plan.isSelected(), PrintingModel::addPlan));
        words.setId("print-words");
        getChildren().addAll(Controls.line(8, choices, bar, Controls.growing(new Region()), print, leave), words);
        Controls.onEscape(this, this::leave);
        Controls.show(this, false);
    }

    private String words(PrintPaper each) {
        PrintingModel present = model;
        return present == null ? "" : present.words(each);
    }

    boolean isWorking() {
        return work.isRunning();
    }

    /** Shows the strip for a test plate's film, or says why it can't be printed. */
    void openTestFilm(Path pdf) {
        try {
            open(PrintSource.of(pdf));
        } catch (Refusal unreadable) {
            messages.cant(String.valueOf(unreadable.getMessage()));
        }
    }

    /** Shows the strip for a film; printers are looked for meanwhile. */
    void open(PrintSource film) {
        if (isWorking()) {
            messages.cant("a film is being printed: wait for it, or stop it first");
            return;
        }
        messages.clear();
        source = film;
        model = null;
        state(false, false, true);
        say("Looking for printers", false);
        Controls.show(this, true);
        leave.requestFocus();
        looking.start(progress -> printers.find(), news(found -> found(film, found)));
    }

    private void found(PrintSource film, List<PrinterAtHand> found) {
        model = new PrintingModel(film.size(), found);
        Controls.show(choices, !found.isEmpty());
        filling = true;
        printer.getItems().setAll(found);
        plan.setSelected(false);
        copies.setText("1");
        filling = false;
        refresh();
        (found.isEmpty() ? leave : printer).requestFocus();
    }

    /** Tells the model of a choice, unless it is the model that has just been shown. */
    private <T> void take(@Nullable T chosen, BiConsumer<PrintingModel, T> told) {
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
        Controls.look(words, "fault", fault);
    }

    /** Whether choices are seen, whether it prints, and whether there is nothing to print yet. */
    private void state(boolean choosing, boolean printing, boolean waiting) {
        Controls.show(choices, choosing);
        Controls.show(bar, printing);
        bar.setProgress(0);
        leave.setText(printing ? "Stop" : "Don't print");
        print.setDisable(waiting);
    }

    private void start() {
        PrintingModel present = model;
        PrintSource film = source;
        if (present == null || film == null || present.refusal().isPresent()) {
            return;
        }
        Order order = present.order();
        state(false, true, true);
        leave.requestFocus();
        say("Printing on " + order.printer().name() + ", " + order.paper().name(), false);
        work.start(
                progress -> {
                    film.printing().print(order, progress);
                    return order.printer();
                },
                news(chosen -> {
                    Controls.show(this, false);
                    messages.done("handed to " + chosen.name()
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
            Controls.show(this, false);
        }
    }

    /** Stops, and waits for the end. */
    void close() {
        looking.forget();
        work.close();
    }

    private <T> LongWork.News<T> news(Consumer<T> done) {
        return new LongWork.News<>(
                bar::setProgress,
                done,
                fault -> {
                    state(model != null, false, model == null);
                    say(fault, true);
                },
                () -> {
                    Controls.show(this, false);
                    messages.done("printing stopped; see whether the printer still holds a part of it");
                });
    }
}
