package greyground.desk.picture;

import greyground.app.live.SheetOutline;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.desk.look.Drawn;
import greyground.desk.look.Freshness;
import greyground.desk.look.Pen;
import greyground.desk.look.RoomLight;
import greyground.desk.model.BenchState;
import greyground.desk.model.CropFrame;
import greyground.desk.model.Hand;
import greyground.desk.model.PicturePorts;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import javafx.scene.Scene;
import javafx.scene.layout.Pane;
import javafx.scene.shape.Rectangle;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;

/**
 * The picture on the bench, to its edges, where rulers may lie on it, and a loupe that lies on it. {@link PicturePorts} knows which part is seen,
 * {@link HandOnPicture} what pointer and keys do, {@link PictureDrawing} how marks look. Between a move and its new picture the old one is
 * moved along, so the hand never waits.
 */
public final class PictureView extends Drawn {
    private final Pane window = new Pane();
    private final LaidPicture laid = new LaidPicture();
    private final Runnable moved;
    private final Runnable loupeMoved;
    private final HandOnPicture hand;
    private final PicturePorts ports = new PicturePorts();
    private final Loupe loupe = new Loupe();
    private final LaidPicture lost = new LaidPicture();
    private final Against against = new Against();
    private @Nullable BenchState imageState;
    private final Freshness freshness = new Freshness(laid.node()::setOpacity);
    private final Freshness loupeFreshness = new Freshness(this::dimLoupe);
    private double loupeOpacity = 1;
    private Station station = Station.ART;
    private Marks marks = Marks.NONE;
    private List<SheetOutline> edges = List.of();
    private boolean inches;
    private boolean rulers;
    private boolean present;

    /**
     * What is drawn over the picture.
     *
     * @param crop the fragment, on the art
     * @param bevelMillimetres of the plate
     * @param places of warnings on the plate, numbered from 1 in this order
     * @param chosen index of the place in hand, -1 for none
     */
    public record Marks(Optional<Viewport.Area> crop, double bevelMillimetres, List<Viewport.Area> places, int chosen) {
        static final Marks NONE = new Marks(Optional.empty(), 0, List.of(), -1);
    }

    /**
     * A view of nothing yet.
     *
     * @param moved hears that another part is to be seen
     * @param loupeMoved hears that the loupe lies elsewhere
     * @param pointed hears the place under the pointer
     */
    public PictureView(Runnable moved, Runnable loupeMoved, BiConsumer<Double, Double> pointed) {
        super("picture");
        this.moved = moved;
        this.loupeMoved = loupeMoved;
        this.hand = new HandOnPicture(this, pointed);
        getStyleClass().add("surround");
        setAccessibleText("Picture");
        setAccessibleHelp(
                "Arrow keys move it, plus and minus bring it nearer, A shows all, T its true size, L lays the loupe on it, F freezes what it shows, M compares two bites");
        window.getChildren().addAll(laid.node(), lost.node(), against.node());
        Rectangle clip = new Rectangle();
        clip.widthProperty().bind(window.widthProperty());
        clip.heightProperty().bind(window.heightProperty());
        window.setClip(clip);
        canvas.setMouseTransparent(true);
        getChildren().addAll(window, canvas);
        setMinSize(200, 160);
    }

    public HandOnPicture hand() {
        return hand;
    }

    public Station station() {
        return station;
    }

    public Viewport port() {
        return ports.at(station);
    }

    /** The same, for the pixels of the screen. */
    public LiveView view() {
        return port().view(outputScale());
    }

    public double outputScale() {
        return Optional.ofNullable(getScene())
                .map(Scene::getWindow)
                .map(Window::getOutputScaleX)
                .orElse(1.0);
    }

    boolean isPresent() {
        return present;
    }

    public Loupe loupe() {
        return loupe;
    }

    public boolean loupeOn() {
        return loupe.isOn();
    }

    // ------------------------------------------------------------------ what is seen

    /** Shows another station; plate and print stay at the same place. */
    public void choose(Station chosen) {
        station = chosen;
        forgetPictures();
        hand.take(Hand.MOVE);
        if (loupe.isOn()) {
            loupe.layInTheMiddleOf(port());
            loupeMoved.run();
        }
        setAccessibleText("Picture: " + chosen.label());
        draw();
    }

    /** How large art and plate are; what was shown whole stays so. */
    public void measure(double artWidth, double artHeight, double plateWidth, double plateHeight) {
        present = true;
        ports.measure(artWidth, artHeight, plateWidth, plateHeight);
        refit();
    }

    public void clear() {
        present = false;
        forgetPictures();
        ports.forget();
        draw();
    }

    private void forgetPictures() {
        laid.forget();
        lost.forget();
        imageState = null;
        against.forget();
        freshness.fresh();
        loupe.show(null);
        loupeFreshness.fresh();
    }

    private void refit() {
        ports.resize(Math.max(1, (int) window.getWidth()), Math.max(1, (int) window.getHeight()));
        draw();
    }

    /** Lays out anew where the window has not been measured yet. */
    public void fitIfNew() {
        if (present) {
            refit();
        }
    }

    public void fit() {
        ports.showWhole(station);
        refit();
        moved.run();
    }

    /** Shows it at its true size on a screen of so many dots per inch, in the window's units. */
    public void trueSize(double screenDotsPerInch) {
        ports.trueSize(station, screenDotsPerInch);
        look();
    }

    public void goTo(double x, double y) {
        ports.goToPlace(x, y);
        look();
    }

    public void go(Viewport port) {
        ports.go(station, port);
        look();
    }

    void zoom(double x, double y, double factor) {
        ports.zoom(station, x, y, factor);
        look();
    }

    private void look() {
        draw();
        moved.run();
    }

    // ------------------------------------------------------------------ what is shown

    /**
     * Shows a picture, unless another station is looked at by now.
     *
     * @param from what it was computed from
     */
    public void show(LivePicture picture, LiveView view, Station of, BenchState from) {
        if (of == station) {
            imageState = from;
            laid.show(picture, view, light);
            freshness.fresh();
            draw();
        }
    }

    /** What the picture that is seen was computed from; empty where none is. */
    public Optional<BenchState> shows() {
        return Optional.ofNullable(imageState);
    }

    /** Something has changed: what is seen is of before, until what is new has been computed. */
    public void stale() {
        lost.forget();
        if (imageState != null) {
            freshness.stale();
        }
        if (loupe.image() != null) {
            loupeFreshness.stale();
        }
    }

    public boolean isStale() {
        return freshness.isStale();
    }

    public void showLoupe(LivePicture picture) {
        loupe.show(light.image(picture));
        loupeFreshness.fresh();
        draw();
    }

    private void dimLoupe(double opacity) {
        if (opacity != loupeOpacity) {
            loupeOpacity = opacity;
            draw();
        }
    }

    public void look(RoomLight shining, boolean inInches) {
        inches = inInches;
        laid.look(shining);
        lost.look(shining);
        against.look(shining);
        loupe.show(null);
        look(shining);
    }

    /** Lays rulers along its upper and left edges, or takes them away. */
    public void measure(boolean wanted) {
        rulers = wanted;
        draw();
    }

    public void mark(Marks over) {
        marks = over;
        draw();
    }

    void edges(List<SheetOutline> seen) {
        edges = seen;
        draw();
    }

    /** The fragment as the hand may shape it; empty at other stations than the art. */
    public Optional<CropFrame> cropFrame() {
        return station == Station.ART && present ? marks.crop().map(this::frame) : Optional.empty();
    }

    private CropFrame frame(Viewport.Area area) {
        return new CropFrame(area, ports.artArea().width(), ports.artArea().height());
    }

    /** Lays tints over what the picture loses. */
    public void showLost(LivePicture tints, LiveView view) {
        lost.show(tints, view, light);
        draw();
    }

    public void forgetLost() {
        lost.forget();
    }

    // ------------------------------------------------------------------ two pictures

    /** Another picture of the same place; {@link #draw} shows what was changed of it. */
    public Against against() {
        return against;
    }

    /** Keeps what is seen now, to compare what comes with it; says whether there was anything. */
    public boolean keep() {
        LivePicture now = laid.picture();
        LiveView view = laid.view();
        if (now == null || view == null) {
            return false;
        }
        against.show(now, view, "Before");
        against.part(true);
        draw();
        return true;
    }

    // ------------------------------------------------------------------ the loupe

    public LiveView loupeView() {
        return loupe.view(station, outputScale());
    }

    public void toggleLoupe() {
        loupe.toggle();
        if (loupe.isOn()) {
            loupe.layInTheMiddleOf(port());
            loupeMoved.run();
        }
        draw();
    }

    public void layLoupe(double x, double y) {
        loupe.lay(x, y);
        if (loupe.isOn()) {
            loupeMoved.run();
        }
        draw();
    }

    // ------------------------------------------------------------------ layout and drawing

    @Override
    protected void layoutChildren() {
        double width = Math.max(1, getWidth());
        double height = Math.max(1, getHeight());
        boolean other = width != window.getWidth() || height != window.getHeight();
        window.resizeRelocate(0, 0, width, height);
        if (other) {
            refit();
            if (present) {
                moved.run();
            }
        }
        super.layoutChildren();
    }

    @Override
    protected void draw(Pen pen) {
        laid.place(port());
        lost.place(port());
        against.place(port());
        PictureDrawing drawing = new PictureDrawing(pen, light, inches);
        if (!present) {
            return;
        }
        Viewport port = port();
        if (station == Station.ART) {
            Optional<Viewport.Area> seen = hand.drawn().or(marks::crop);
            seen.ifPresent(area -> drawing.crop(port, area));
            seen.map(this::frame).ifPresent(frame -> drawing.grips(port, frame));
            hand.line().ifPresent(drawing::line);
        } else {
            if (edges.isEmpty()) {
                drawing.plate(port, ports.plateArea(), marks.bevelMillimetres(), station);
            } else {
                new SheetEdges(pen, light).draw(port, edges);
            }
            drawing.places(port, marks);
            hand.draw(drawing, port);
        }
        if (loupe.isOn()) {
            drawing.loupe(port, loupe, station, loupeOpacity);
        }
        if (!station.side().isEmpty() && !against.isSeen()) {
            drawing.says(station.side(), rulers);
        }
        against.draw(pen, port, station.label());
        if (rulers) {
            drawing.rulers(port, station == Station.ART);
        }
    }
}
