package greyground.desk.window;

import greyground.app.files.KeptFiles;
import greyground.desk.look.Controls;
import greyground.desk.look.FlatPicture;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskServices;
import greyground.desk.model.DeskWords;
import greyground.desk.model.FileAsking;
import greyground.desk.model.TestPlateModel;
import greyground.desk.model.TestPlateState;
import java.nio.file.Path;
import java.util.Map;
import java.util.function.Consumer;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;

/** The test plate: what fills the middle, and its own panel beside it. */
final class TestPlateView {
    /** What stands below the film, by the names that it has there. */
    private static final Map<String, String> FOOT = Map.of(
            "sheet", "Sheet",
            "chart", "Chart",
            "printsAtLightness", "Prints",
            "leftOut", "Left out",
            "plan", "Plan",
            "notes", "Note");

    private final TestPlateModel model;
    private final DeskServices services;
    private final BorderPane middle = new BorderPane();
    private final TestPlatePanel side;
    private final Label title = Controls.label("", "strong");
    private final Label subtitle = new Label();
    private final ToggleButton ofScan =
            Controls.toggle("Scan", "test-scan", "The scan, with what was read drawn over it");
    private final ToggleButton ofTones =
            Controls.toggle("Tones", "test-tones", "What was measured, against what was predicted");
    private final HBox ways = new HBox(8, ofScan, ofTones);
    private final HBox head;
    private final VBox foot = new VBox(2);
    private final FlatPicture sheet = new FlatPicture("Test film");
    private final FlatPicture scan = new FlatPicture("Scan with the fields that were read");
    private final FlatPicture chart = new FlatPicture("Tones that were measured, against what was predicted");
    private final ProgressBar bar = Controls.progress("Progress", 320);
    private final Label working = new Label();
    private final Button stop;
    private final Label refusedTitle = Controls.wrapped("", "heading");
    private final Label refusedWords = Controls.wrapped("");
    private final ScrollPane start;
    private final StackPane work;
    private final StackPane refused;

    TestPlateView(TestPlateModel model, BenchModel bench, DeskServices services, Consumer<Path> printFilm) {
        this.model = model;
        this.services = services;
        this.side = new TestPlatePanel(model, bench, this::askScan, this::askFilm, this::askWhere, printFilm);
        this.start = startPage();
        this.stop = Controls.button("Stop", "test-stop", "Stop; nothing is changed", model::stop);
        this.work = page(working, bar, stop);
        this.refused = refusedPage();
        middle.setId("test-plate");
        middle.getStyleClass().add("bench");
        sheet.setId("test-film-sheet");
        scan.setId("test-scan-picture");
        chart.setId("tone-chart");
        subtitle.getStyleClass().add("quiet");
        subtitle.setMinWidth(0);
        Controls.oneOf(this::refresh, ofScan, ofTones);
        head = Controls.line(16, title, Controls.growing(subtitle), ways);
        head.getStyleClass().add("test-head");
        foot.getStyleClass().add("test-foot");
        Drops.accept(middle, this::dropped);
        Drops.accept(side, this::dropped);
        model.watch(this::stateChanged);
        refresh();
    }

    Region middle() {
        return middle;
    }

    TestPlatePanel side() {
        return side;
    }

    void look(RoomLight light) {
        sheet.look(light);
        scan.look(light);
        chart.look(light);
    }

    /** Puts the focus where the next step is. */
    void focusMiddle() {
        Node page = middle.getCenter();
        if (page == start) {
            page.lookup("#test-choose-scan-first").requestFocus();
        } else if (page == work) {
            stop.requestFocus();
        } else if (page == refused) {
            page.lookup("#test-other-scan").requestFocus();
        } else {
            page.requestFocus();
        }
    }

    // ------------------------------------------------------------------ files

    private void dropped(Path file) {
        if (KeptFiles.isPdf(file)) {
            model.useFilm(file);
        } else {
            model.read(file);
        }
    }

    private void askScan() {
        services.files()
                .open("Choose the scan of the proof", FileAsking.Kind.PICTURE)
                .ifPresent(model::read);
    }

    private void askFilm() {
        services.files()
                .open("Choose the film of the test plate", FileAsking.Kind.FILM)
                .ifPresent(model::useFilm);
    }

    private void askWhere() {
        services.files()
                .save(
                        "Make the test film",
                        FileAsking.Kind.FILM,
                        "test-plate-" + model.kind().word() + ".pdf")
                .ifPresent(model::make);
    }

    // ------------------------------------------------------------------ pages

    private ScrollPane startPage() {
        Button choose = Controls.mainButton(
                "Choose the scan",
                "test-choose-scan-first",
                "Choose the scanned proof of a test plate; or drop it here",
                this::askScan);
        VBox steps = new VBox(
                16,
                Controls.wrapped("Learn the workshop's own tones", "heading"),
                Controls.wrapped(
                        "A test plate carries tones that are known. Etched and printed as you always do, its scan shows what"
                                + " your workshop really prints; films made alike then get their curve from it."),
                step(
                        "1",
                        "Make the film",
                        "Choose a kind at the right, look at the film, write it. Print it at 100 %, ink side and printer as"
                                + " for any film.",
                        ""),
                step(
                        "2",
                        "Expose, wash, bite, print",
                        "As the film's own plan says, and as always: nothing may be improved on the way. Measure the depth of"
                                + " the bare strip if you can.",
                        "\u26a0 Ultraviolet, ferric chloride and caustic hurt eyes and skin. The safety data sheet of the material"
                                + " in your hand, local law and your studio's rules come first."),
                step(
                        "3",
                        "Scan the dry proof",
                        "In grey, 300 to 600 pixels per inch, 16 bits if you can, every automatic correction off, 10 mm of paper"
                                + " round the plate. A photograph will not do.",
                        ""),
                step("4", "Drop the scan here", "Or a test film, to read the proof of that one.", ""),
                choose);
        steps.setMaxWidth(560);
        steps.getStyleClass().add("test-steps");
        StackPane centred = new StackPane(steps);
        centred.getStyleClass().add("bench");
        ScrollPane page = Controls.rolling(centred);
        page.setFitToHeight(true);
        page.getStyleClass().add("bench-scroll");
        return page;
    }

    private static Node step(String number, String name, String text, String caution) {
        Label numeral = Controls.label(number, "heading");
        numeral.setMinWidth(24);
        VBox told = new VBox(2, Controls.wrapped(name, "strong"), Controls.wrapped(text));
        if (!caution.isEmpty()) {
            told.getChildren().add(Controls.wrapped(caution, "strong"));
        }
        return new HBox(8, numeral, Controls.growing(told));
    }

    private StackPane refusedPage() {
        refusedWords.setId("test-refused");
        return page(
                refusedTitle,
                refusedWords,
                new HBox(
                        8,
                        Controls.mainButton("Choose a scan", "test-other-scan", "Read another scan", this::askScan),
                        Controls.button(
                                "Choose a test film", "test-other-film", "Read proofs of another film", this::askFilm),
                        Controls.button("Back", "test-refused-back", "Leave this", model::leave)));
    }

    private static StackPane page(Node... parts) {
        VBox box = new VBox(16, parts);
        box.setMaxWidth(520);
        box.setMaxHeight(Region.USE_PREF_SIZE);
        StackPane page = new StackPane(box);
        page.getStyleClass().addAll("bench", "test-steps");
        return page;
    }

    // ------------------------------------------------------------------ showing

    /** The model has gone on: goes along, and keeps the focus within. */
    private void stateChanged() {
        boolean had = Controls.within(focused(), middle) || Controls.within(focused(), side);
        Node page = middle.getCenter();
        if (model.state() instanceof TestPlateState.Read read && page != scan && page != chart) {
            (read.scan().isPresent() ? ofScan : ofTones).setSelected(true);
        }
        refresh();
        Node focused = focused();
        if (middle.isVisible() && page != middle.getCenter() && (had || focused == null || focused.isDisabled())) {
            focusMiddle();
        }
    }

    private @Nullable Node focused() {
        return middle.getScene() == null ? null : middle.getScene().getFocusOwner();
    }

    void refresh() {
        side.refresh();
        TestPlateState state = model.state();
        if (state instanceof TestPlateState.Start) {
            show(start, "", "");
        } else if (state instanceof TestPlateState.Working now) {
            working.setText(now.what());
            bar.setProgress(now.done());
            stop.setAccessibleText("Stop: " + now.what());
            show(work, "", "");
        } else if (state instanceof TestPlateState.Refused no) {
            refusedTitle.setText(no.what());
            refusedWords.setText(DeskWords.of(no.words()) + ".");
            show(refused, "", "");
        } else if (state instanceof TestPlateState.Film film) {
            sheet.show(film.sheet());
            foot.getChildren().setAll(TestPlatePanel.named(film.findings(), FOOT));
            show(
                    sheet,
                    "Test film",
                    film.written()
                            .map(file -> "written as " + file.getFileName())
                            .orElse("its ink towards you; not written yet"));
        } else if (state instanceof TestPlateState.Read read) {
            show(read);
        }
    }

    private void show(TestPlateState.Read read) {
        read.scan().ifPresent(scan::show);
        read.tones().ifPresent(chart::show);
        ofTones.setVisible(read.tones().isPresent());
        boolean seen = ofScan.isSelected() || read.tones().isEmpty();
        show(
                seen ? scan : chart,
                DeskWords.of(read.outcome().title()),
                read.outcome().findings().text("how"));
        ofScan.setSelected(seen);
        ofTones.setSelected(!seen);
    }

    private void show(Node page, String name, String words) {
        boolean read = page == scan || page == chart;
        title.setText(name);
        subtitle.setText(words);
        subtitle.setTooltip(words.isEmpty() ? null : new Tooltip(words));
        Controls.show(ways, read);
        middle.setTop(name.isEmpty() ? null : head);
        middle.setBottom(page == sheet ? foot : null);
        Node before = middle.getCenter();
        if (before != page) {
            boolean held = before != null && before.isFocused();
            middle.setCenter(page);
            if (held) {
                page.requestFocus();
            }
        }
    }
}
