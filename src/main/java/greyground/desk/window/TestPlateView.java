package greyground.desk.window;

import greyground.app.files.KeptFiles;
import greyground.desk.look.Controls;
import greyground.desk.look.FlatPicture;
import greyground.desk.look.Light;
import greyground.desk.look.ToneChart;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskServices;
import greyground.desk.model.DeskWords;
import greyground.desk.model.FileAsking;
import greyground.desk.model.TestPlateModel;
import greyground.desk.model.TestPlateState;
import greyground.finding.Findings;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

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
    private final Label title = new Label();
    private final Label subtitle = new Label();
    private final ToggleButton ofScan =
            Controls.toggle("Scan", "test-scan", "The scan, with what was read drawn over it");
    private final ToggleButton ofTones =
            Controls.toggle("Tones", "test-tones", "What was measured, against what was predicted");
    private final HBox head = new HBox(16);
    private final VBox foot = new VBox(2);
    private final FlatPicture sheet = new FlatPicture("Test film");
    private final FlatPicture scan = new FlatPicture("Scan with the fields that were read");
    private final ToneChart chart = new ToneChart();
    private final ProgressBar bar = new ProgressBar(0);
    private final Label working = new Label();
    private final Button stop = new Button("Stop");
    private final Label refusedTitle = new Label();
    private final Label refusedWords = new Label();
    private final ScrollPane start;
    private final StackPane work;
    private final StackPane refused;

    TestPlateView(
            TestPlateModel model, BenchModel bench, DeskServices services, DeskFiles files, Consumer<Path> printFilm) {
        this.model = model;
        this.services = services;
        this.side = new TestPlatePanel(model, bench, this::askScan, this::askFilm, this::askWhere, printFilm);
        this.start = startPage();
        this.work = workPage();
        this.refused = refusedPage();
        middle.setId("test-plate");
        middle.getStyleClass().add("bench");
        sheet.setId("test-film-sheet");
        scan.setId("test-scan-picture");
        title.getStyleClass().add("strong");
        subtitle.getStyleClass().add("quiet");
        subtitle.setMinWidth(0);
        HBox.setHgrow(subtitle, Priority.ALWAYS);
        subtitle.setMaxWidth(Double.MAX_VALUE);
        title.setMinWidth(Region.USE_PREF_SIZE);
        ToggleGroup group = new ToggleGroup();
        for (ToggleButton each : List.of(ofScan, ofTones)) {
            each.setToggleGroup(group);
            each.setOnAction(pressed -> {
                each.setSelected(true);
                refresh();
            });
        }
        head.getStyleClass().add("test-head");
        foot.getStyleClass().add("test-foot");
        head.setAlignment(Pos.CENTER_LEFT);
        head.getChildren().addAll(title, subtitle, new HBox(8, ofScan, ofTones));
        files.acceptDrops(middle, this::dropped);
        files.acceptDrops(side, this::dropped);
        model.watch(this::stateChanged);
        refresh();
    }

    Region middle() {
        return middle;
    }

    TestPlatePanel side() {
        return side;
    }

    void show(boolean wanted) {
        middle.setVisible(wanted);
        side.setVisible(wanted);
    }

    void look(Light light) {
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
        Label heading = new Label("Learn the shop's own tones");
        heading.getStyleClass().add("heading");
        Button choose = Controls.button(
                "Choose the scan",
                "test-choose-scan-first",
                "Choose the scanned proof of a test plate; or drop it here",
                this::askScan);
        choose.getStyleClass().add("main");
        VBox steps = new VBox(
                16,
                heading,
                Controls.wrapped(
                        "A test plate carries tones that are known. Etched and printed as you always do, its scan tells what"
                                + " your shop really prints; films made alike then get their curve from it."),
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
        ScrollPane page = new ScrollPane(centred);
        page.setFitToWidth(true);
        page.setFitToHeight(true);
        page.setFocusTraversable(false);
        page.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        page.getStyleClass().add("bench-scroll");
        return page;
    }

    private static Node step(String number, String name, String text, String caution) {
        Label numeral = new Label(number);
        numeral.getStyleClass().add("heading");
        numeral.setMinWidth(24);
        Label strong = new Label(name);
        strong.getStyleClass().add("strong");
        VBox told = new VBox(2, strong, Controls.wrapped(text));
        if (!caution.isEmpty()) {
            Label care = Controls.wrapped(caution);
            care.getStyleClass().add("strong");
            told.getChildren().add(care);
        }
        HBox.setHgrow(told, Priority.ALWAYS);
        return new HBox(8, numeral, told);
    }

    private StackPane workPage() {
        bar.setPrefWidth(320);
        bar.setAccessibleText("Progress");
        stop.setId("test-stop");
        stop.setOnAction(pressed -> model.stop());
        return page(working, bar, stop);
    }

    private StackPane refusedPage() {
        refusedTitle.getStyleClass().add("heading");
        refusedWords.setId("test-refused");
        refusedWords.setWrapText(true);
        refusedWords.setMinHeight(Region.USE_PREF_SIZE);
        Button scanAgain = new Button("Choose a scan");
        scanAgain.setId("test-other-scan");
        scanAgain.getStyleClass().add("main");
        scanAgain.setOnAction(pressed -> askScan());
        Button other = new Button("Choose a test film");
        other.setId("test-other-film");
        other.setOnAction(pressed -> askFilm());
        Button back = new Button("Back");
        back.setId("test-refused-back");
        back.setOnAction(pressed -> model.leave());
        return page(refusedTitle, refusedWords, new HBox(8, scanAgain, other, back));
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
        boolean had =
                isWithin(middle.getScene() == null ? null : middle.getScene().getFocusOwner());
        Node page = middle.getCenter();
        if (model.state() instanceof TestPlateState.Read read && page != scan && page != chart) {
            (read.scan().isPresent() ? ofScan : ofTones).setSelected(true);
        }
        refresh();
        if (middle.isVisible() && page != middle.getCenter() && (had || !isInScene())) {
            focusMiddle();
        }
    }

    private boolean isInScene() {
        return middle.getScene() != null
                && middle.getScene().getFocusOwner() != null
                && !middle.getScene().getFocusOwner().isDisabled();
    }

    private boolean isWithin(@org.jspecify.annotations.Nullable Node node) {
        for (Node each = node; each != null; each = each.getParent()) {
            if (each == middle || each == side) {
                return true;
            }
        }
        return false;
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
            foot.getChildren()
                    .setAll(film.findings().all().stream()
                            .filter(finding -> FOOT.containsKey(finding.key()))
                            .flatMap(finding -> finding.words().stream()
                                    .map(words -> named(FOOT.getOrDefault(finding.key(), ""), words)))
                            .toList());
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
        Findings findings = read.outcome().findings();
        boolean check = !findings.rows("tones").isEmpty();
        if (check) {
            chart.show(findings);
        }
        read.outcome().response().ifPresent(chart::show);
        boolean tones = check || read.outcome().response().isPresent();
        ofTones.setVisible(tones);
        boolean seen = ofScan.isSelected() || !tones;
        show(seen ? scan : chart, DeskWords.of(read.outcome().title()), findings.text("how"));
        ofScan.setSelected(seen);
        ofTones.setSelected(!seen);
    }

    private void show(Node page, String name, String words) {
        boolean read = page == scan || page == chart;
        title.setText(name);
        subtitle.setText(words);
        subtitle.setTooltip(words.isEmpty() ? null : new Tooltip(words));
        ofScan.getParent().setVisible(read);
        ofScan.getParent().setManaged(read);
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

    private static Node named(String name, String told) {
        Label first = new Label(name);
        first.getStyleClass().add("quiet");
        first.setMinWidth(56);
        Label then = Controls.wrapped(DeskWords.of(told));
        HBox.setHgrow(then, Priority.ALWAYS);
        return new HBox(8, first, then);
    }
}
