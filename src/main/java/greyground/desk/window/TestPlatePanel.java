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
import greyground.workshop.Figure;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.geometry.Insets;
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
import javafx.scene.layout.VBox;

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
    private final ComboBox<TestPlateKind> kinds =
            Controls.named(Controls.choice(TestPlateKind::label), "test-kind", "Kind of test plate", "What it is for");
    private final TextField plate = Controls.field(
            "test-plate-size",
            "Plate of the test film",
            "Width and height with their unit, such as 80x100mm or 4x6in",
            "wide");
    private final Label kindWords = Controls.wrapped("", "quiet");
    private final Label shared = Controls.wrapped("", "quiet");
    private final Label film = new Label();
    private final Button print;
    private final Button choose;
    private final VBox asking;
    private final VBox lesson = new VBox(8);
    private final ScrollPane scroll = Controls.rolling(null);
    private final Label standing = Controls.wrapped("");
    private final Button accept;
    private final Button again;
    private final Button leave;
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
        Button preview = Controls.button(
                "Look at it", "test-preview", "Shows the film before it is made", () -> fromField(model::preview));
        Button make = Controls.button(
                "Make test film", "test-make", "Writes the film as a PDF at true size", () -> fromField(askWhere));
        print = Controls.button(
                "Print it",
                "test-print",
                "Prints the test film at true size; make or choose one first",
                () -> model.film().ifPresent(printFilm));
        choose = Controls.mainButton(
                "Choose the scan", "test-choose-scan", "A scan of the proof, any kind of picture", askScan);
        accept = Controls.mainButton(
                "Accept", "test-accept", "Takes this into the workshop; Ctrl+Z takes it back", model::accept);
        again = Controls.button(
                "Read again",
                "test-read-again",
                "Reads the scan once more, for the workshop as it is",
                model::readAgain);
        leave = Controls.button("Discard", "test-leave", "Changes nothing and puts the reading away", model::leave);
        kinds.getStyleClass().add("wide");
        kinds.getItems().setAll(TestPlateKind.values());
        kinds.valueProperty().addListener((what, was, is) -> {
            if (!filling && is != null) {
                model.choose(is);
            }
        });
        plate.setOnAction(entered -> model.plate(plate.getText()));
        Controls.whenLeft(plate, () -> {
            if (!filling) {
                model.plate(plate.getText());
            }
        });
        film.setTextOverrun(OverrunStyle.CENTER_ELLIPSIS);
        film.setMinWidth(0);
        Button other = Controls.button(
                "Choose", "test-choose-film", "The film whose proof you scanned, if it is not this one", askFilm);
        other.setAccessibleText("Choose the test film");
        asking = new VBox(
                8,
                Controls.wrapped(Place.TEST_PLATE.label(), "heading"),
                strong("The film"),
                row("Kind", kinds),
                kindWords,
                row("Plate", plate),
                shared,
                new HBox(8, preview, make),
                print,
                strong("The proof"),
                Controls.line(8, Controls.growing(film), other),
                tell(
                        "Depth measured",
                        "depth",
                        "not measured",
                        "Depth of the bare strip, such as 34um: gives the bath's rate"),
                tell(
                        "Bare paper",
                        "paper",
                        "as in the workshop",
                        "L* or density of the bare sheet, such as 95 or 0.06"),
                tell("Bitten for", "bite", "as its plan says", "How long this plate was bitten, such as 22min"),
                tell(
                        "Corners",
                        "corners",
                        "found by its codes",
                        "Where the codes can't be read: the plate's corners in scan pixels, clockwise from the print's"
                                + " top left, such as 120,95 1890,101 1884,2460 115,2452"));
        asking.getStyleClass().add("settings");
        lesson.getStyleClass().add("settings");
        VBox.setVgrow(scroll, Priority.ALWAYS);
        standing.setId("test-standing");
        VBox foot = new VBox(8, standing, new HBox(8, choose, accept, again, leave));
        foot.getStyleClass().add("help");
        getChildren().addAll(scroll, foot);
    }

    private void fromField(Runnable then) {
        model.plate(plate.getText());
        then.run();
    }

    private static Label strong(String words) {
        Label label = Controls.wrapped(words, "strong");
        VBox.setMargin(label, new Insets(8, 0, 0, 0));
        return label;
    }

    private static HBox row(String name, Node field) {
        Label label = Controls.label(name);
        label.setLabelFor(field);
        return Controls.line(8, Controls.growing(label), field);
    }

    private HBox tell(String name, String what, String usual, String hint) {
        TextField field = Controls.field("test-" + what, name, hint, "told");
        field.setText(model.told(what));
        field.setPromptText(usual);
        field.textProperty().addListener((text, was, is) -> model.tell(what, is));
        return row(name, field);
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
        List.of(standing, accept, again, leave).forEach(part -> Controls.show(part, read));
        Controls.show(choose, !read);
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
        Controls.show(accept, how == TestPlateState.Standing.OFFERED);
        Controls.show(again, how == TestPlateState.Standing.OVERTAKEN);
        leave.setText(how == TestPlateState.Standing.OFFERED ? "Discard" : "Done");
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

    private void tell(ReadOutcome outcome) {
        Findings findings = outcome.findings();
        List<Node> parts = new ArrayList<>();
        parts.add(Controls.wrapped(DeskWords.of(outcome.title()), "heading"));
        if (!findings.rows("tones").isEmpty()) {
            check(parts, findings);
        }
        listed(parts, "What the workshop learns", findings.rows("changes"), this::learned);
        listed(parts, "What this plate can't tell", findings.rows("undetermined"), this::stays);
        listed(parts, "What the print shows", named(findings, SHOWN), node -> node);
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
        double tolerance = figure(judged, "tolerance");
        Label verdict = strong(DeskWords.of(judged.text("verdict")) + ".");
        verdict.setId("test-verdict");
        parts.add(verdict);
        parts.add(Controls.wrapped(String.format(
                Locale.ROOT,
                "The worst tone is %+.1f L* off; as a whole (root mean square) they are %.1f L* off. Within %.0f L* is as"
                        + " good as right.",
                figure(judged, "worst"),
                figure(judged, "rootMeanSquare"),
                tolerance)));
        for (Findings tone : judged.rows("tones")) {
            double by = figure(tone, "off");
            Label off = Controls.label(String.format(Locale.ROOT, "%+.1f L*", by));
            boolean within = Math.abs(by) <= tolerance;
            Controls.look(off, "fault", !within);
            parts.add(row(
                    String.format(
                            Locale.ROOT,
                            "L* %.1f printed %.1f%s",
                            figure(tone, "statedLightness"),
                            figure(tone, "lightness"),
                            within ? "" : ", not within"),
                    off));
        }
    }

    private Node learned(Findings number) {
        FigureWords words = FigureWords.of(number.text("path"));
        String value = words.value(figure(number, "before")) + "  \u2192  " + words.withUnit(figure(number, "after"));
        String sure = "95 % sure of " + words.value(figure(number, "low")) + " to "
                + words.withUnit(figure(number, "high")) + "; was " + number.text("known");
        return new VBox(
                0, row("\u25cf  " + words.label(), Controls.label(value, "strong")), Controls.wrapped(sure, "quiet"));
    }

    private Node stays(Findings number) {
        FigureWords words = FigureWords.of(number.text("path"));
        Figure figure = bench.workshop().figures().get(number.text("path"));
        String mark = figure != null && figure.isAssumed() ? "\u25cb  " : "\u25cf  ";
        return new VBox(
                0,
                row(mark + words.label(), Controls.label(words.withUnit(figure(number, "before")))),
                Controls.wrapped(DeskWords.of(number.text("reason")), "quiet"));
    }

    private static double figure(Findings number, String key) {
        return number.number(key).orElseThrow();
    }

    /** Some findings in words, each beside the name that it has here. */
    static List<Node> named(Findings findings, Map<String, String> names) {
        return findings.all().stream()
                .filter(finding -> names.containsKey(finding.key()))
                .flatMap(finding ->
                        finding.words().stream().map(words -> named(names.getOrDefault(finding.key(), ""), words)))
                .toList();
    }

    private static Node named(String name, String words) {
        Label first = Controls.wrapped(name, "quiet");
        first.setMinWidth(64);
        return new HBox(8, first, Controls.growing(Controls.wrapped(DeskWords.of(words))));
    }
}
