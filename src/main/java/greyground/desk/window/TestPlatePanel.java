package greyground.desk.window;

import greyground.app.teach.ReadOutcome;
import greyground.desk.look.Controls;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskWords;
import greyground.desk.model.Place;
import greyground.desk.model.TestPlateKind;
import greyground.desk.model.TestPlateModel;
import greyground.desk.model.TestPlateState;
import greyground.desk.setting.FigureWords;
import greyground.finding.Findings;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.geometry.Insets;
import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.OverrunStyle;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.util.StringConverter;

/** Beside the test plate: what film to make and what is told of the proof; once that is read, what it says. */
final class TestPlatePanel extends VBox {
    /** Findings that stand in a list, by the names that they have there. */
    private static final Map<String, String> SHOWN = Map.ofEntries(
            Map.entry("take", "Take"),
            Map.entry("untaken", "Take"),
            Map.entry("strips", "Strip"),
            Map.entry("printableRange", "Prints"),
            Map.entry("turningPoint", "Turns"),
            Map.entry("misfit", "Misfit"),
            Map.entry("outliers", "Left"),
            Map.entry("uneven", "Uneven"),
            Map.entry("bands", "Bands"),
            Map.entry("targets", "Targets"));

    private final TestPlateModel model;
    private final BenchModel bench;
    private final ComboBox<TestPlateKind> kinds = new ComboBox<>();
    private final TextField plate = new TextField();
    private final Label kindWords = quiet("");
    private final Label shared = quiet("");
    private final Label film = new Label();
    private final Button preview = Controls.button("Look at it", "test-preview", "Shows the film before it is made");
    private final Button make = Controls.button("Make test film", "test-make", "Writes the film as a PDF at true size");
    private final Button print =
            Controls.button("Print it", "test-print", "Prints the test film at true size; make or choose one first");
    private final Button choose =
            Controls.button("Choose the scan", "test-choose-scan", "A scan of the proof, any kind of picture");
    private final List<TextField> told = new ArrayList<>();
    private final VBox asking;
    private final VBox lesson = new VBox(8);
    private final ScrollPane scroll = new ScrollPane();
    private final Label standing = new Label();
    private final Button accept =
            Controls.button("Accept", "test-accept", "Takes this into the workshop; Ctrl+Z takes it back");
    private final Button again =
            Controls.button("Read again", "test-read-again", "Reads the scan once more, for the workshop as it is");
    private final Button leave = Controls.button("Leave it", "test-leave", "Changes nothing and puts the reading away");
    private final VBox foot = new VBox(8, standing, new HBox(8, choose, accept, again, leave));
    private boolean filling;

    TestPlatePanel(
            TestPlateModel model,
            BenchModel bench,
            Runnable askScan,
            Runnable askFilm,
            Runnable askWhere,
            Consumer<Path> printFilm) {
        this.model = model;
        this.bench = bench;
        preview.setOnAction(pressed -> fromField(model::preview));
        make.setOnAction(pressed -> fromField(askWhere));
        print.setOnAction(pressed -> model.film().ifPresent(printFilm));
        choose.setOnAction(pressed -> askScan.run());
        accept.getStyleClass().add("main");
        accept.setOnAction(pressed -> model.accept());
        again.setOnAction(pressed -> model.readAgain());
        leave.setOnAction(pressed -> model.leave());
        choose.getStyleClass().add("main");
        kinds();
        plate.setId("test-plate-size");
        plate.getStyleClass().add("wide");
        plate.setAccessibleText("Plate of the test film");
        plate.setTooltip(new Tooltip("Width and height with their unit, such as 80x100mm or 4x6in"));
        plate.setOnAction(entered -> model.plate(plate.getText()));
        plate.focusedProperty().addListener((what, was, is) -> {
            if (was && !filling) {
                model.plate(plate.getText());
            }
        });
        film.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
        film.setMaxWidth(Double.MAX_VALUE);
        film.setMinWidth(0);
        HBox.setHgrow(film, Priority.ALWAYS);
        Button other = Controls.button(
                "Choose", "test-choose-film", "The film whose proof you scanned, if it is not this one");
        other.setAccessibleText("Choose the test film");
        other.setOnAction(pressed -> askFilm.run());
        HBox ofFilm = new HBox(8, film, other);
        ofFilm.setAlignment(Pos.CENTER_LEFT);
        asking = new VBox(
                8,
                heading(Place.TEST_PLATE.label()),
                strong("The film"),
                row("Kind", kinds),
                kindWords,
                row("Plate", plate),
                shared,
                new HBox(8, preview, make),
                print,
                strong("The proof"),
                ofFilm,
                row(
                        "Depth measured",
                        tell("depth", "not measured", "Depth of the bare strip, such as 34um: tells the bath's rate")),
                row(
                        "Bare paper",
                        tell("paper", "as in the workshop", "L* or density of the bare sheet, such as 95 or 0.06")),
                row("Bitten for", tell("bite", "as its plan says", "How long this plate was bitten, such as 22min")),
                row(
                        "Corners",
                        tell(
                                "corners",
                                "found by its codes",
                                "Where the codes can't be read: the plate's corners in scan pixels, clockwise from the print's"
                                        + " top left, such as 120,95 1890,101 1884,2460 115,2452")));
        asking.getStyleClass().add("settings");
        lesson.getStyleClass().add("settings");
        scroll.setFitToWidth(true);
        scroll.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        scroll.setFocusTraversable(false);
        VBox.setVgrow(scroll, Priority.ALWAYS);
        standing.setWrapText(true);
        standing.setMinHeight(Region.USE_PREF_SIZE);
        standing.setId("test-standing");
        foot.getStyleClass().add("help");
        getChildren().addAll(scroll, foot);
    }

    private void fromField(Runnable then) {
        model.plate(plate.getText());
        then.run();
    }

    private static Label heading(String words) {
        Label label = new Label(words);
        label.getStyleClass().add("heading");
        return label;
    }

    private static Label strong(String words) {
        Label label = Controls.wrapped(words);
        label.getStyleClass().add("strong");
        VBox.setMargin(label, new Insets(8, 0, 0, 0));
        return label;
    }

    private static Label quiet(String words) {
        Label label = Controls.wrapped(words);
        label.getStyleClass().add("quiet");
        return label;
    }

    private static HBox row(String name, Node field) {
        Label label = new Label(name);
        label.setMinWidth(Region.USE_PREF_SIZE);
        label.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(label, Priority.ALWAYS);
        label.setLabelFor(field);
        if (field.getAccessibleText() == null) {
            field.setAccessibleText(name);
        }
        HBox row = new HBox(8, label, field);
        row.setAlignment(Pos.CENTER_LEFT);
        return row;
    }

    private void kinds() {
        kinds.setId("test-kind");
        kinds.getStyleClass().add("wide");
        kinds.setAccessibleText("Kind of test plate");
        kinds.getItems().setAll(TestPlateKind.values());
        kinds.setConverter(new StringConverter<>() {
            @Override
            public String toString(TestPlateKind kind) {
                return kind == null ? "" : kind.label();
            }

            @Override
            public TestPlateKind fromString(String label) {
                throw new UnsupportedOperationException(label);
            }
        });
        kinds.valueProperty().addListener((what, was, is) -> {
            if (!filling && is != null) {
                model.choose(is);
            }
        });
    }

    private TextField tell(String what, String usual, String hint) {
        TextField field = new TextField(model.told(what));
        field.setId("test-" + what);
        field.getStyleClass().add("told");
        field.setPromptText(usual);
        field.setTooltip(new Tooltip(hint));
        field.setAccessibleHelp(hint);
        field.textProperty().addListener((text, was, is) -> model.tell(what, is));
        told.add(field);
        return field;
    }

    void focusFirst() {
        if (model.state() instanceof TestPlateState.Read) {
            (accept.isVisible() && !accept.isDisabled() ? accept : leave).requestFocus();
        } else {
            kinds.requestFocus();
        }
    }

    // ------------------------------------------------------------------ showing

    void refresh() {
        filling = true;
        kinds.setValue(model.kind());
        if (!plate.isFocused() || plate.getText().isBlank()) {
            plate.setText(model.plate());
        }
        filling = false;
        kindWords.setText(model.kind().words());
        shared.setText(model.sharedWords());
        film.setText(model.film().map(file -> "Film: " + file.getFileName()).orElse("No film chosen yet"));
        film.setTooltip(model.film().map(file -> new Tooltip(file.toString())).orElse(null));
        print.setDisable(model.film().isEmpty());
        asking.setDisable(model.state() instanceof TestPlateState.Working);
        boolean read = model.state() instanceof TestPlateState.Read;
        choose.setDisable(model.state() instanceof TestPlateState.Working);
        for (Node one : List.of(standing, accept, again, leave)) {
            show(one, read);
        }
        show(choose, !read);
        if (model.state() instanceof TestPlateState.Read now) {
            tell(now.outcome());
            stand();
        }
        Node page = read ? lesson : asking;
        if (scroll.getContent() != page) {
            scroll.setContent(page);
            scroll.setVvalue(0);
        }
    }

    private void stand() {
        TestPlateState.Standing how = model.standing();
        if (accept.isFocused() && how != TestPlateState.Standing.OFFERED) {
            leave.requestFocus();
        }
        show(accept, how == TestPlateState.Standing.OFFERED);
        show(again, how == TestPlateState.Standing.OVERTAKEN);
        leave.setText(how == TestPlateState.Standing.OFFERED ? "Leave it" : "Done");
        standing.setText(
                switch (how) {
                    case NONE -> "A check plate only judges: nothing is changed.";
                    case OFFERED ->
                        model.isKept()
                                ? "Taken back in this window. The workshop's file still holds it: Save workshop takes it out"
                                        + " there too."
                                : "Nothing is changed yet.";
                    case TAKEN ->
                        "\u25cf The workshop has learned this. Ctrl+Z takes it back."
                                + (model.isKept() ? "" : " Save workshop keeps it in a file.");
                    case OVERTAKEN -> "The workshop has changed since the scan was read: read it again to accept it.";
                });
    }

    private static void show(Node node, boolean wanted) {
        node.setVisible(wanted);
        node.setManaged(wanted);
    }

    private void tell(ReadOutcome outcome) {
        Findings findings = outcome.findings();
        List<Node> parts = new ArrayList<>();
        parts.add(heading(DeskWords.of(outcome.title())));
        if (!findings.rows("tones").isEmpty()) {
            check(parts, findings);
        }
        listed(parts, "What the workshop learns", findings.rows("changes"), this::learned);
        listed(parts, "What this plate can't tell", findings.rows("undetermined"), this::stays);
        listed(
                parts,
                "What the print shows",
                findings.all().stream()
                        .filter(finding -> SHOWN.containsKey(finding.key()))
                        .flatMap(finding -> finding.words().stream()
                                .map(words -> named(SHOWN.getOrDefault(finding.key(), ""), words)))
                        .toList(),
                node -> node);
        listed(parts, "Notes", findings.words("notes"), note -> Controls.wrapped(DeskWords.of(note) + "."));
        lesson.getChildren().setAll(parts);
    }

    private static <T> void listed(List<Node> parts, String title, List<T> what, Function<T, Node> node) {
        if (!what.isEmpty()) {
            parts.add(strong(title));
            what.forEach(each -> parts.add(node.apply(each)));
        }
    }

    private static void check(List<Node> parts, Findings judged) {
        double tolerance = judged.number("tolerance").orElseThrow();
        Label verdict = strong(DeskWords.of(judged.text("verdict")) + ".");
        verdict.setId("test-verdict");
        parts.add(verdict);
        parts.add(Controls.wrapped(String.format(
                Locale.ROOT,
                "The worst tone is %+.1f L* off; as a whole (root mean square) they are %.1f L* off. Within %.0f L* is as"
                        + " good as right.",
                judged.number("worst").orElseThrow(),
                judged.number("rootMeanSquare").orElseThrow(),
                tolerance)));
        for (Findings tone : judged.rows("tones")) {
            double by = tone.number("off").orElseThrow();
            Label off = new Label(String.format(Locale.ROOT, "%+.1f L*", by));
            off.setMinWidth(Region.USE_PREF_SIZE);
            boolean within = Math.abs(by) <= tolerance;
            if (!within) {
                off.getStyleClass().add("fault");
            }
            parts.add(row(
                    String.format(
                            Locale.ROOT,
                            "L* %.1f printed %.1f%s",
                            tone.number("statedLightness").orElseThrow(),
                            tone.number("lightness").orElseThrow(),
                            within ? "" : ", not within"),
                    off));
        }
    }

    private Node learned(Findings number) {
        FigureWords words = FigureWords.of(number.text("path"));
        Label value = new Label(words.value(number.number("before").orElseThrow()) + "  \u2192  "
                + words.withUnit(number.number("after").orElseThrow()));
        value.setMinWidth(Region.USE_PREF_SIZE);
        value.getStyleClass().add("strong");
        return new VBox(
                0,
                row("\u25cf  " + words.label(), value),
                quiet("95 % sure of " + words.value(number.number("low").orElseThrow()) + " to "
                        + words.withUnit(number.number("high").orElseThrow()) + "; was " + number.text("known")));
    }

    private Node stays(Findings number) {
        FigureWords words = FigureWords.of(number.text("path"));
        Label value = new Label(words.withUnit(number.number("before").orElseThrow()));
        value.setMinWidth(Region.USE_PREF_SIZE);
        boolean assumed = bench.workshop().figures().containsKey(number.text("path"))
                && bench.workshop().figures().get(number.text("path")).isAssumed();
        return new VBox(
                0,
                row((assumed ? "\u25cb  " : "\u25cf  ") + words.label(), value),
                quiet(DeskWords.of(number.text("reason"))));
    }

    private static Node named(String name, String words) {
        Label first = quiet(name);
        first.setMinWidth(64);
        Label then = Controls.wrapped(DeskWords.of(words));
        HBox.setHgrow(then, Priority.ALWAYS);
        return new HBox(8, first, then);
    }
}
