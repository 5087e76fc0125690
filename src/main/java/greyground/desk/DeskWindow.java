package greyground.desk;

import greyground.app.LivePlate;
import greyground.app.LiveView;
import greyground.app.PlateWarning;
import greyground.film.Job;
import greyground.plan.ExposurePlan;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.animation.KeyFrame;
import javafx.animation.PauseTransition;
import javafx.animation.Timeline;
import javafx.geometry.Pos;
import javafx.scene.Parent;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ToggleButton;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;
import javafx.stage.Screen;
import javafx.util.Duration;
import org.jspecify.annotations.Nullable;

/** The whole window: puts the parts together and carries news between the model, the bench and the screen. */
final class DeskWindow {
    static final double LEAST_WIDTH = 1100;
    static final double LEAST_HEIGHT = 700;

    private final BenchModel model;
    private final LiveDesk live;
    private final DeskFiles files;
    private final BorderPane root = new BorderPane();
    private final VBox top = new VBox();
    private final StationRail rail = new StationRail(this::choose);
    private final PictureView picture;
    private final SettingsPane settings;
    private final DiagramView diagram = new DiagramView();
    private final WarningsView warnings = new WarningsView(this::goTo);
    private final PlanView plan;
    private final EmptyBench empty;
    private final StackPane middle = new StackPane();
    private final Label title = new Label();
    private final Label message = new Label();
    private final Label tone = new Label();
    private final ExportBar export;
    private final HeadBar head;
    private final PauseTransition settled = new PauseTransition(Duration.millis(900));
    private final Timeline ticking;
    private Station station = Station.ART;
    private Light light = new Light(false);
    private boolean inches;
    private int chosenPlace = -1;
    private @Nullable LivePlate plate;
    private @Nullable ExposurePlan planned;

    DeskWindow(DeskServices services) {
        Recovery recovery = new Recovery(services.folder(), services.process());
        this.model = new BenchModel(recovery);
        this.live = new LiveDesk(services.window(), this::say);
        this.files = new DeskFiles(services, model, live, recovery, this::ask, this::say);
        this.picture = new PictureView(view -> askPicture(), view -> askLoupe(), this::point);
        this.settings = new SettingsPane(model, () -> inches, services.today());
        this.plan = new PlanView(services.nanoTime());
        this.empty = new EmptyBench(files);
        this.export = new ExportBar(services, model, files, this::say);
        this.head = new HeadBar(this, files, export);
        this.ticking = new Timeline(new KeyFrame(Duration.millis(200), tick -> tick()));
        ticking.setCycleCount(javafx.animation.Animation.INDEFINITE);
        build();
        model.watch(this::changed);
        picture.whenDone(this::handDone);
        settled.setOnFinished(quiet -> settledDown());
        choose(Station.ART);
        changed();
        ticking.play();
    }

    Parent root() {
        return root;
    }

    BenchModel model() {
        return model;
    }

    DeskFiles files() {
        return files;
    }

    PictureView picture() {
        return picture;
    }

    PlanView plan() {
        return plan;
    }

    ExportBar export() {
        return export;
    }

    /** Whether all pictures that were asked for are there. */
    boolean isAtRest() {
        return !live.isBusy();
    }

    private void build() {
        root.getStylesheets().add(String.valueOf(DeskWindow.class.getResource("desk.css")));
        root.getStyleClass().add("root");
        title.getStyleClass().add("strong");
        title.setMinWidth(60);
        HBox.setHgrow(title, Priority.ALWAYS);
        title.setMaxWidth(Double.MAX_VALUE);
        title.setTextOverrun(javafx.scene.control.OverrunStyle.CENTER_ELLIPSIS);
        HBox line = new HBox(16, title, head);
        line.setAlignment(Pos.CENTER_LEFT);
        line.getStyleClass().add("head");
        top.getChildren().setAll(line);
        middle.getChildren().setAll(picture, plan, empty);
        plan.setVisible(false);
        VBox centre = new VBox(middle, warnings);
        VBox.setVgrow(middle, Priority.ALWAYS);
        VBox side = new VBox(settings, diagram);
        VBox.setVgrow(settings, Priority.ALWAYS);
        side.getStyleClass().add("side");
        message.setMinWidth(0);
        tone.getStyleClass().add("quiet");
        tone.setMinWidth(Region.USE_PREF_SIZE);
        message.setMaxWidth(Double.MAX_VALUE);
        HBox.setHgrow(message, Priority.ALWAYS);
        HBox status = new HBox(16, message, tone, export);
        status.setAlignment(Pos.CENTER_LEFT);
        status.getStyleClass().add("status");
        status.setMinHeight(32);
        root.setTop(top);
        root.setLeft(rail);
        root.setCenter(centre);
        root.setRight(side);
        root.setBottom(status);
        root.heightProperty().addListener((what, was, is) -> diagram.tall(is.doubleValue() * 0.28));
        DeskKeys.bind(this, root);
        files.acceptDrops(root);
    }

    /** Puts a question at the window's head; an earlier one goes. */
    void ask(String words, List<Question.Answer> answers) {
        top.getChildren().removeIf(Question.class::isInstance);
        Question[] own = new Question[1];
        own[0] = new Question(words, answers, () -> top.getChildren().remove(own[0]));
        top.getChildren().add(own[0]);
        own[0].focusFirst();
    }

    void say(String words) {
        message.setText(
                words.isEmpty() ? "" : words.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + words.substring(1));
        message.setTooltip(words.isEmpty() ? null : new javafx.scene.control.Tooltip(words));
    }

    // ------------------------------------------------------------------ the model has changed

    private void changed() {
        Optional<BenchState> state = model.state();
        boolean present = state.isPresent();
        if (present && empty.isVisible()) {
            picture.requestFocus();
        }
        empty.setVisible(!present);
        if (!present) {
            empty.refresh();
        }
        warnings.setDisable(!present);
        rail.setDisable(!present);
        title.setText(files.title());
        title.setTooltip(new javafx.scene.control.Tooltip(files.longTitle()));
        head.refresh();
        settings.refresh();
        export.refresh();
        if (present) {
            say("");
            mark(state.get().job());
            warnings.stale();
            live.show(state.get(), this::ready);
        } else {
            warnings.idle();
            picture.clear();
            rail.clear();
            diagram.show(null);
        }
        settled.playFromStart();
    }

    private void ready(LivePlate made) {
        plate = made;
        Job job = made.job();
        picture.measure(
                made.artWidth(),
                made.artHeight(),
                job.plate().widthMillimetres(),
                job.plate().heightMillimetres());
        diagram.show(made.curves());
        settings.found(Map.of("white", 100 * made.artWhite(), "black", 100 * made.artBlack()));
        mark(job);
        files.compare(job);
        askPicture();
        if (picture.loupeOn()) {
            askLoupe();
        }
        askThumbnails();
        model.state().ifPresent(state -> live.words(this::planned, warnings::remarks, this::checked));
    }

    private void planned(ExposurePlan made) {
        planned = made;
        if (plan.isVisible()) {
            model.state().ifPresent(state -> plan.show(state.job().title(), made));
        }
    }

    private void checked(List<PlateWarning> found) {
        chosenPlace = -1;
        warnings.checked(found);
        model.state().ifPresent(state -> mark(state.job()));
    }

    private void settledDown() {
        Runnable saving = model.autosaving();
        Thread saver = new Thread(saving, "autosave");
        saver.setDaemon(false);
        saver.start();
    }

    private void tick() {
        plan.tick();
        boolean computing = live.isBusy() && plate == null && model.state().isPresent();
        if (computing && message.getText().isEmpty()) {
            say("computing the plate: a new grain or bath takes some seconds the first time");
        } else if (!computing && message.getText().startsWith("Computing the plate")) {
            say("");
        }
    }

    // ------------------------------------------------------------------ pictures

    private double outputScale() {
        return root.getScene() == null || root.getScene().getWindow() == null
                ? 1
                : root.getScene().getWindow().getOutputScaleX();
    }

    private void askPicture() {
        if (plate != null) {
            LiveView view = picture.port().view(outputScale());
            Station seen = station;
            live.picture(seen, view, shown -> picture.show(shown, view, seen));
        }
    }

    private void askLoupe() {
        if (plate != null) {
            Station seen = station;
            live.loupe(seen, picture.loupeView(outputScale()), shown -> {
                if (seen == station) {
                    picture.showLoupe(shown);
                }
            });
        }
    }

    private void askThumbnails() {
        LivePlate made = plate;
        if (made == null) {
            return;
        }
        double scale = outputScale();
        int width = StationRail.PICTURE_WIDTH;
        int height = StationRail.PICTURE_HEIGHT;
        LiveView art = Viewport.fitting(new Viewport.Area(0, 0, made.artWidth(), made.artHeight()), width, height)
                .view(scale);
        LiveView of = Viewport.fitting(
                        new Viewport.Area(
                                0,
                                0,
                                made.job().plate().widthMillimetres(),
                                made.job().plate().heightMillimetres()),
                        width,
                        height)
                .view(scale);
        live.thumbnails(art, of, (each, small) -> rail.show(each, small, light, scale));
    }

    /** Lays pointer and loupe on a place of the plate. */
    void pointAt(double x, double y) {
        picture.layLoupe(x, y);
        point(x, y);
    }

    private void point(double x, double y) {
        if (plate != null) {
            String where = station == Station.ART
                    ? String.format(java.util.Locale.ROOT, "%.0f, %.0f px", x, y)
                    : place(x) + ", " + place(y) + " " + Unit.MILLIMETRES.symbol(inches);
            live.tone(station, x, y, told -> {
                diagram.follow(told);
                tone.setText(where + "   " + DiagramView.words(told));
            });
        }
    }

    private String place(double millimetres) {
        return String.format(
                java.util.Locale.ROOT, inches ? "%.3f" : "%.1f", Unit.MILLIMETRES.shown(millimetres, inches));
    }

    // ------------------------------------------------------------------ what the hand does

    void choose(Station chosen) {
        station = chosen;
        showPlan(false);
        rail.choose(chosen);
        picture.choose(chosen);
        settings.setExtra(chosen == Station.ART ? List.of(artTools()) : List.of());
        settings.show(chosen);
        if (plate != null) {
            picture.fitIfNew();
            askPicture();
        }
    }

    private FlowPane artTools() {
        FlowPane tools = new FlowPane(8, 8);
        tools.getChildren()
                .addAll(
                        tool("Pick white  W", "pick-white", () -> picture.take(PictureView.Hand.PICK_WHITE)),
                        tool("Pick black  B", "pick-black", () -> picture.take(PictureView.Hand.PICK_BLACK)),
                        tool("Find both", "find-both", this::findEnds),
                        tool("Draw crop  C", "draw-crop", () -> picture.take(PictureView.Hand.CROP)),
                        tool("No crop", "no-crop", () -> tell("crop", Map.of("crop", "0%,0%,100%,100%"))),
                        tool("Quarter left  [", "quarter-left", () -> quarter(false)),
                        tool("Quarter right  ]", "quarter-right", () -> quarter(true)));
        VBox.setMargin(tools, new javafx.geometry.Insets(0, 0, 8, 0));
        return tools;
    }

    private static Button tool(String words, String id, Runnable action) {
        Button button = new Button(words);
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setOnAction(pressed -> action.run());
        return button;
    }

    private void findEnds() {
        tell("white and black found", Map.of("white", "automatic", "black", "automatic"));
    }

    void quarter(boolean clockwise) {
        model.state()
                .ifPresent(state ->
                        tell("quarter turn", Turning.quarter(state.job().art(), clockwise)));
    }

    void tell(String what, Map<String, String> words) {
        try {
            model.tell(what, "", words);
        } catch (Refusal refused) {
            say(String.valueOf(refused.getMessage()));
        }
    }

    private void handDone(PictureView.Hand hand, Viewport.Area area) {
        LivePlate made = plate;
        if (made == null) {
            return;
        }
        if (hand == PictureView.Hand.CROP) {
            tell("crop", Turning.cropped(area, made.artWidth(), made.artHeight()));
        } else {
            String word = hand == PictureView.Hand.PICK_WHITE ? "white" : "black";
            live.luminance(
                    area.left() + area.width() / 2,
                    area.top() + area.height() / 2,
                    luminance -> tell("ink " + word, Map.of(word, Refusal.plain(luminance * 100) + "%")));
        }
    }

    /** Takes up a tool of the art, where there is art to work on. */
    void takeIf(boolean art, PictureView.Hand hand) {
        if (art) {
            picture.take(hand);
            picture.requestFocus();
        }
    }

    private void mark(Job job) {
        LivePlate made = plate;
        List<WarningsView.Line> placed = warnings.placed();
        picture.mark(new PictureView.Marks(
                made == null
                        ? Optional.empty()
                        : Optional.of(Turning.area(job.art().crop(), made.artWidth(), made.artHeight())),
                job.placing().bevelMillimetres(),
                placed.stream()
                        .map(line -> new Viewport.Area(
                                line.place().orElseThrow().acrossMillimetres(),
                                line.place().orElseThrow().downMillimetres(),
                                0,
                                0))
                        .toList(),
                chosenPlace));
    }

    private void goTo(WarningsView.Line line) {
        line.place().ifPresent(place -> {
            if (station == Station.ART) {
                choose(Station.COPPER);
            }
            chosenPlace = line.number() - 1;
            model.state().ifPresent(state -> mark(state.job()));
            picture.goTo(place.acrossMillimetres(), place.downMillimetres());
        });
    }

    // ------------------------------------------------------------------ views

    void showPlan(boolean wanted) {
        ExposurePlan made = planned;
        plan.setVisible(wanted && model.state().isPresent());
        picture.setVisible(!plan.isVisible());
        if (plan.isVisible()) {
            if (made != null) {
                plan.show(model.state().orElseThrow().job().title(), made);
            }
            plan.requestFocus();
        }
        head.refresh();
    }

    boolean isPlanShown() {
        return plan.isVisible();
    }

    /** Amber on black, so that the screen fogs no film. */
    void shineSafely(boolean safe) {
        light = new Light(safe);
        root.getStyleClass().remove("safelight");
        if (safe) {
            root.getStyleClass().add("safelight");
        }
        picture.look(light, inches);
        diagram.look(light);
        askPicture();
        askThumbnails();
        if (picture.loupeOn()) {
            askLoupe();
        }
        head.refresh();
    }

    boolean isSafe() {
        return light.safe();
    }

    void measureInInches(boolean wanted) {
        inches = wanted;
        picture.look(light, inches);
        settings.refresh();
        head.refresh();
    }

    boolean isInInches() {
        return inches;
    }

    void trueSize() {
        picture.trueSize(Screen.getPrimary().getDpi());
    }

    /** Goes on to the next part of the window: stations, picture, settings, warnings. */
    void nextPart() {
        javafx.scene.Node focused = root.getScene().getFocusOwner();
        if (within(focused, rail)) {
            picture.requestFocus();
        } else if (within(focused, picture)) {
            settings.focusFirst();
        } else if (within(focused, settings)) {
            warnings.focusFirst();
        } else {
            rail.focusChosen();
        }
    }

    private static boolean within(javafx.scene.@Nullable Node node, Parent part) {
        for (javafx.scene.Node each = node; each != null; each = each.getParent()) {
            if (each == part) {
                return true;
            }
        }
        return false;
    }

    /** Whether the window may close now; if not, the person is asked. */
    boolean mayClose(Runnable close) {
        if (export.isWorking()) {
            ask(
                    "A film is being made; closing stops it, and nothing of it is written.",
                    List.of(
                            new Question.Answer("Stop and close", () -> {
                                export.stop();
                                if (files.mayLeave("closing", close)) {
                                    close.run();
                                }
                            }),
                            new Question.Answer("Wait for it", () -> {})));
            return false;
        }
        return files.mayLeave("closing", close);
    }

    /** The window is gone. */
    void closed() {
        ticking.stop();
        settled.stop();
        export.stop();
        live.close();
    }

    /** Opens a file named at the start, or asks whether to take up what was left. */
    void begin(Optional<Path> file) {
        file.ifPresentOrElse(files::open, files::offerLeftWork);
    }

    static ToggleButton toggle(String words, String id) {
        ToggleButton button = new ToggleButton(words);
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        return button;
    }
}
