package greyground.desk.window;

import greyground.desk.clock.BenchClocks;
import greyground.desk.clock.KeptClocks;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchModel;
import greyground.desk.model.DeskHabits;
import greyground.desk.model.DeskServices;
import greyground.desk.model.LiveDesk;
import greyground.desk.model.Messages;
import greyground.desk.model.Messages.Answer;
import greyground.desk.model.Place;
import greyground.desk.model.PrintSource;
import greyground.desk.model.Recovery;
import greyground.desk.model.Station;
import greyground.desk.model.TestPlateModel;
import greyground.desk.page.AboutPage;
import greyground.desk.page.FilePage;
import greyground.desk.page.KeysPage;
import greyground.desk.page.LaidPage;
import greyground.desk.page.LaidPages;
import greyground.desk.page.PreferencesPage;
import greyground.desk.picture.DiagramView;
import greyground.desk.picture.PictureView;
import greyground.desk.picture.SheetView;
import greyground.desk.picture.StationRail;
import greyground.desk.plan.PlanView;
import greyground.desk.setting.Setting;
import greyground.desk.setting.SettingsPane;
import greyground.desk.setting.WorkshopPage;
import greyground.film.job.Job;
import greyground.quantity.Refusal;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.UnaryOperator;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;

/**
 * The whole window: puts the parts together. {@link BenchNews} carries news between them, {@link DeskFrame} lays the parts
 * out, {@link DeskPlaces} fills the middle, {@link PlateSight} asks for pictures, {@link ArtTools} works on the art.
 */
final class DeskWindow {
    static final double LEAST_WIDTH = 1100;
    static final double LEAST_HEIGHT = 700;

    final BenchModel model;
    final LiveDesk live;
    final DeskFiles files;
    final ShopFiles shops;
    final DeskHabits habits;
    final DeskFrame frame = new DeskFrame();
    final Messages messages = frame.messages;
    final DeskFolds folds;
    final DeskWishes wishes;
    final PreferencesPage preferences;
    final StationRail rail = new StationRail(this::choose, this::go);
    final PlateSight sight;
    final PictureView picture;
    final LoupeBench loupeBench;
    final SplitTools split;
    final ArtTools artTools;
    final PlateTools plateTools;
    final SettingsPane settings;
    final WarningsView warnings;
    final BenchClocks clocks;
    final KeptClocks keptClocks;
    final ClockStrip clockStrip = new ClockStrip(() -> go(Place.PLAN));
    final LaidPages pages = new LaidPages();
    final KeysPage keys = new KeysPage(this::putAway);
    final FilePage filePage = new FilePage(this::putAway);
    final AboutPage about = new AboutPage(this::putAway);
    final PlanView plan;
    final EmptyBench empty;
    final ArrivalView arrival;
    final WorkshopPage workshop;
    final DeskPlaces middle;
    final ExportBar export;
    final TestPlateModel lessons;
    final TestPlateView testPlate;
    final SheetView sheet;
    final PrintingStrip printing;
    final OpeningBar opening;
    final HeadBar head;
    final BenchMenu menu;
    final ToolStrip tools;
    final ToneStrip tones;
    final ZoomFigure zoom = new ZoomFigure(this);
    final Autosave autosave;
    final BenchNews news = new BenchNews(this);
    final Ticking ticking;
    private RoomLight light = new RoomLight(false);

    DeskWindow(DeskServices given) {
        DeskServices services = given.asking(new FilesByLight(this, given.files()));
        Recovery recovery = new Recovery(services.folder(), services.process());
        this.habits = new DeskHabits(services.folder());
        this.wishes = new DeskWishes(this, habits);
        this.preferences = new PreferencesPage(wishes, this::putAway);
        this.folds = new DeskFolds(this, habits);
        this.model = new BenchModel(recovery);
        this.live = new LiveDesk(services.window(), messages::cant);
        this.files = new DeskFiles(services, model, live, recovery, this);
        this.shops = new ShopFiles(services, model, files, this);
        DiagramView diagram = new DiagramView();
        this.sight = new PlateSight(live, frame, rail, diagram);
        this.picture = sight.picture();
        this.loupeBench = new LoupeBench(sight, live, messages, this::trueSize);
        this.split = new SplitTools(sight, live);
        this.artTools = new ArtTools(model, live, sight, this::tell);
        this.plateTools = new PlateTools(sight, habits, this::tell);
        this.settings = new SettingsPane(model, wishes::inches, services.today());
        this.warnings = new WarningsView(model, sight, this::choose, this::set);
        this.clocks = new BenchClocks(services.nanoTime());
        this.keptClocks = new KeptClocks(services.folder(), services.process(), services.time());
        this.autosave = new Autosave(model, services.window(), messages::cant, shops::keep);
        this.plan = new PlanView(model, live, clocks, this::tick, messages::cant);
        this.empty = new EmptyBench(files);
        this.arrival = new ArrivalView(this, habits);
        this.workshop = new WorkshopPage(model, this::set, shops.byName(), shops::use, shops::name, messages::cant);
        this.export = new ExportBar(services, this);
        this.sheet = new SheetView(live, frame::tellTone);
        this.printing = new PrintingStrip(services.printers(), services.window(), messages);
        this.opening = new OpeningBar(services.nanoTime(), this::stopOpening);
        this.lessons = new TestPlateModel(services, model, messages);
        this.testPlate = new TestPlateView(lessons, model, services, printing::openTestFilm);
        this.tones = new ToneStrip(model, live, diagram);
        this.tools =
                new ToolStrip(loupeBench.tools(), split, artTools, plateTools, sheet.opener(() -> toggle(Place.SHEET)));
        this.middle = new DeskPlaces(this);
        this.menu = new BenchMenu(this);
        this.head = new HeadBar(this);
        this.ticking = new Ticking(this, services.bell());
        frame.head(head, menu, printing);
        VBox works = new VBox(8, plateTools.line(), opening.bar, export.bar);
        works.setMaxWidth(Region.USE_PREF_SIZE);
        settings.getStyleClass().add("narrow");
        Node[] views = {loupeBench, plan, sheet, empty, testPlate.middle(), workshop, arrival, pages};
        frame.middle(rail, tools, tones, warnings, zoom.button(), works, views);
        sight.whenPictureMoves(zoom::refresh);
        frame.side(settings, testPlate.side());
        frame.foot(clockStrip);
        frame.keepAbove(loupeBench.strip());
        frame.widthProperty().addListener(size -> folds.refresh());
        frame.heightProperty().addListener(size -> folds.refresh());
        live.watchOpening(opening::progress);
        DeskKeys.bind(this, frame);
        split.listen(frame);
        Drops.accept(frame, files::open);
        model.watch(news::changed);
        choose(Station.ART);
        news.changed();
        shine(new RoomLight(false, wishes.surround()));
        refreshUnits();
        keptClocks.takeUp(clocks);
        shops.begin();
        ticking.play();
    }

    Parent root() {
        return frame;
    }

    /** The picture that fills the middle: a station's, or the whole sheet's. */
    PictureView seen() {
        return middle.picture();
    }

    void turnSheetOver() {
        if (place() == Place.SHEET) {
            sheet.turnOver();
        }
    }

    /** Opens the strip that prints the film of what lies here, once its sheet is laid out. */
    void printFilm() {
        model.state()
                .ifPresent(state -> live.measure(size -> printing.open(PrintSource.of(state, size)), messages::cant));
    }

    /** Whether all pictures that were asked for are there. */
    boolean isAtRest() {
        return !live.isBusy();
    }

    private void tick() {
        ticking.tick();
    }

    void choose(Station chosen) {
        arrival.close();
        middle.show(chosen);
        ticking.showClocks();
        split.choose(chosen);
        sight.choose(chosen);
        loupeBench.choose(chosen);
        tools.choose(chosen);
        tones.choose(chosen);
        settings.show(chosen);
    }

    /** Gives up a picture that is being opened. */
    private void stopOpening() {
        live.stopOpening();
        messages.done("stopped; the picture was not opened");
        news.showAgain();
        middle.focusMiddle();
    }

    /** Goes to a setting, wherever it is. */
    void set(Setting setting) {
        choose(setting.station());
        folds.settings(true);
        frame.applyCss();
        frame.layout();
        settings.focus(setting);
    }

    void tell(String what, UnaryOperator<Job> change) {
        try {
            model.tell(what, change);
        } catch (Refusal refused) {
            messages.cant(String.valueOf(refused.getMessage()));
        }
    }

    /** Fills the middle with another of the window's places. */
    void go(Place wanted) {
        if (!middle.isOpen(wanted)) {
            return;
        }
        arrival.close();
        if (wanted == Place.STATION && model.state().isPresent()) {
            choose(picture.station());
            picture.requestFocus();
            return;
        }
        if (wanted == Place.SHEET) {
            choose(Station.FILM);
        }
        news.showPlan();
        middle.show(wanted);
        ticking.showClocks();
    }

    void toggle(Place wanted) {
        go(place() == wanted ? Place.STATION : wanted);
    }

    Place place() {
        return middle.place();
    }

    /** Lays a page over what is seen. */
    void lay(LaidPage page) {
        middle.lay(page);
        ticking.showClocks();
    }

    /** Takes away the page that is laid over what is seen. */
    void putAway() {
        middle.putAway();
        ticking.showClocks();
    }

    void toggle(LaidPage page) {
        if (pages.isOpen(page)) {
            putAway();
        } else {
            lay(page);
        }
    }

    /** Amber on black, so that the screen fogs no film. */
    void shineSafely(boolean safe) {
        shine(new RoomLight(safe, wishes.surround()));
    }

    private void shine(RoomLight shining) {
        light = shining;
        frame.look(light);
        sight.look(light);
        sheet.look(light, wishes.inches());
        testPlate.look(light);
        arrival.look(light);
        empty.look(light);
        tones.look(light);
        loupeBench.look(light, wishes.inches());
        head.refresh();
    }

    boolean isSafe() {
        return light.safe();
    }

    /** Shows lengths as they are wished. */
    void refreshUnits() {
        boolean inches = wishes.inches();
        sight.measureInInches(inches);
        sheet.look(light, wishes.inches());
        loupeBench.look(light, wishes.inches());
        settings.refresh();
        head.refresh();
    }

    void toggleLoupe() {
        picture.toggleLoupe();
        loupeBench.refresh();
    }

    /** Fills the whole screen, or no more. */
    void fillScreen() {
        if (frame.getScene().getWindow() instanceof Stage stage) {
            stage.setFullScreenExitHint("");
            stage.setFullScreen(!stage.isFullScreen());
        }
    }

    /** Opens the list of warnings, or closes it. */
    void toggleWarnings() {
        warnings.open(!warnings.isOpen());
    }

    void trueSize() {
        seen().trueSize(wishes.pixelsPerInch());
    }

    /** Goes on to the next part of the window: stations, picture, settings, warnings. */
    void nextPart() {
        middle.nextPart(frame.getScene().getFocusOwner());
    }

    /** Opens a file named at the start, or asks whether to take up what was left. */
    void begin(Optional<Path> file) {
        if (file.isEmpty()) {
            empty.focusFirst();
        }
        file.ifPresentOrElse(files::open, files::offerLeftWork);
    }

    /**
     * Whether the window may close now: not while a film is made or printed, nor with unsaved work, unless the person says so. If not, the
     * person is asked, and {@code close} follows the answer.
     */
    boolean mayClose(Runnable close) {
        if (export.isWorking()) {
            askToStop("A film is being made; closing stops it, and nothing of it is written.", export::stop, close);
            return false;
        }
        if (printing.isWorking()) {
            askToStop("A film is being printed; closing stops it.", printing::leave, close);
            return false;
        }
        return files.mayLeave("closing", close);
    }

    private void askToStop(String words, Runnable stop, Runnable close) {
        messages.ask(
                words,
                new Answer("Stop and close", () -> {
                    stop.run();
                    if (files.mayLeave("closing", close)) {
                        close.run();
                    }
                }),
                new Answer("Wait for it", () -> {}));
    }

    void closed() {
        pages.close();
        ticking.stop();
        keptClocks.keep(clocks);
        autosave.close();
        export.close();
        printing.close();
        lessons.close();
        live.close();
    }
}
