package greyground.desk;

import greyground.app.LivePicture;
import greyground.app.LiveView;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.scene.canvas.Canvas;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;
import javafx.scene.layout.Pane;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;

/**
 * The picture on the bench, with rulers along it: pulled and brought nearer by mouse or keys, with a loupe that lies on it. Between a
 * move and its new picture the old one is moved along, so the hand never waits.
 */
final class PictureView extends Region {
    static final int RULER = 28;
    static final int LOUPE = 240;
    static final double LOUPE_MILLIMETRES = 2;
    private static final double LOUPE_ART_PIXELS = 80;
    private static final double NEARER = 1.25;
    private static final double NEAREST_MILLIMETRES = 0.002;
    private static final double NEAREST_ART_PIXELS = 0.05;
    private static final double MOVE_SHARE = 0.125;

    private final Pane window = new Pane();
    private final ImageView image = new ImageView();
    private final Canvas canvas = new Canvas();
    private final Consumer<PictureView> moved;
    private final Consumer<PictureView> loupeMoved;
    private final BiConsumer<Double, Double> pointed;
    private Viewport artPort = new Viewport(0, 0, 1, 1, 1);
    private Viewport platePort = new Viewport(0, 0, 1, 1, 1);
    private Viewport.Area artArea = new Viewport.Area(0, 0, 1, 1);
    private Viewport.Area plateArea = new Viewport.Area(0, 0, 1, 1);
    private boolean artFits = true;
    private boolean plateFits = true;
    private @Nullable LiveView imageView;
    private Station station = Station.ART;
    private Hand hand = Hand.MOVE;
    private boolean loupeOn;
    private double loupeX;
    private double loupeY;
    private @Nullable Image loupeImage;
    private double pressX;
    private double pressY;
    private double dragX;
    private double dragY;
    private boolean dragging;
    private Marks marks = Marks.NONE;
    private Light light = new Light(false);
    private boolean inches;
    private boolean present;
    private BiConsumer<Hand, Viewport.Area> done = (how, where) -> {};

    /** What the hand does on the picture. */
    enum Hand {
        MOVE,
        PICK_WHITE,
        PICK_BLACK,
        CROP
    }

    /**
     * What is drawn over the picture.
     *
     * @param crop the fragment, on the art
     * @param bevelMillimetres of the plate
     * @param places of warnings on the plate, numbered from 1 in this order
     * @param chosen index of the place in hand, -1 for none
     */
    record Marks(Optional<Viewport.Area> crop, double bevelMillimetres, List<Viewport.Area> places, int chosen) {
        static final Marks NONE = new Marks(Optional.empty(), 0, List.of(), -1);

        Marks {
            places = List.copyOf(places);
        }
    }

    /**
     * A view of nothing yet.
     *
     * @param moved hears that another part is to be seen
     * @param loupeMoved hears that the loupe lies elsewhere
     * @param pointed hears the place under the pointer
     */
    PictureView(Consumer<PictureView> moved, Consumer<PictureView> loupeMoved, BiConsumer<Double, Double> pointed) {
        this.moved = moved;
        this.loupeMoved = loupeMoved;
        this.pointed = pointed;
        getStyleClass().add("bench");
        setId("picture");
        setFocusTraversable(true);
        setAccessibleText("Picture");
        setAccessibleHelp(
                "Arrow keys move it, plus and minus bring it nearer, A shows all, T its true size, L lays the loupe on it");
        image.setPreserveRatio(false);
        image.setSmooth(true);
        window.getChildren().add(image);
        Rectangle clip = new Rectangle();
        clip.widthProperty().bind(window.widthProperty());
        clip.heightProperty().bind(window.heightProperty());
        window.setClip(clip);
        canvas.setMouseTransparent(true);
        getChildren().addAll(window, canvas);
        setMinSize(200, 160);
        setOnMousePressed(this::press);
        setOnMouseDragged(this::drag);
        setOnMouseReleased(this::release);
        setOnMouseMoved(this::point);
        setOnScroll(this::scroll);
        setOnKeyPressed(this::key);
        focusedProperty().addListener((what, was, is) -> draw());
    }

    void whenDone(BiConsumer<Hand, Viewport.Area> hears) {
        done = hears;
    }

    Station station() {
        return station;
    }

    Hand hand() {
        return hand;
    }

    Viewport port() {
        return station == Station.ART ? artPort : platePort;
    }

    boolean loupeOn() {
        return loupeOn;
    }

    /** What the loupe sees. */
    LiveView loupeView(double outputScale) {
        double across = loupeAcross();
        int pixels = (int) Math.round(LOUPE * outputScale);
        return new LiveView(loupeX - across / 2, loupeY - across / 2, across / pixels, pixels, pixels);
    }

    private double loupeAcross() {
        return station == Station.ART ? LOUPE_ART_PIXELS : LOUPE_MILLIMETRES;
    }

    /** Shows another station; plate and print stay at the same place. */
    void choose(Station chosen) {
        station = chosen;
        hand = Hand.MOVE;
        image.setImage(null);
        imageView = null;
        loupeImage = null;
        if (loupeOn) {
            loupeX = port().planeX(port().width() / 2.0);
            loupeY = port().planeY(port().height() / 2.0);
            loupeMoved.accept(this);
        }
        setAccessibleText("Picture: " + chosen.label());
        draw();
    }

    void take(Hand chosen) {
        hand = chosen;
        setCursor(chosen == Hand.MOVE ? javafx.scene.Cursor.DEFAULT : javafx.scene.Cursor.CROSSHAIR);
        draw();
    }

    /** How large art and plate are; what was shown whole stays so. */
    void measure(double artWidth, double artHeight, double plateWidth, double plateHeight) {
        present = true;
        artArea = new Viewport.Area(0, 0, artWidth, artHeight);
        plateArea = new Viewport.Area(0, 0, plateWidth, plateHeight);
        refit();
    }

    void clear() {
        present = false;
        image.setImage(null);
        imageView = null;
        loupeImage = null;
        artFits = true;
        plateFits = true;
        draw();
    }

    private void refit() {
        int width = Math.max(1, (int) window.getWidth());
        int height = Math.max(1, (int) window.getHeight());
        artPort = artFits
                ? Viewport.fitting(artArea.grown(artArea.width() / 40), width, height)
                : artPort.resized(width, height);
        platePort(width, height);
        draw();
    }

    private void platePort(int width, int height) {
        platePort = plateFits ? Viewport.fitting(plateArea.grown(14), width, height) : platePort.resized(width, height);
    }

    /** Lays out anew where the window has not been measured yet. */
    void fitIfNew() {
        if (present) {
            refit();
        }
    }

    /** Shows all of it. */
    void fit() {
        if (station == Station.ART) {
            artFits = true;
        } else {
            plateFits = true;
        }
        refit();
        moved.accept(this);
    }

    /**
     * Shows it at its true size.
     *
     * @param screenDotsPerInch of the screen, in the window's units
     */
    void trueSize(double screenDotsPerInch) {
        go(port().atScale(station == Station.ART ? 1 : Viewport.trueSize(screenDotsPerInch)));
    }

    /** Goes to a place of the plate, near enough to see it. */
    void goTo(double x, double y) {
        go(platePort.atScale(Math.min(platePort.perPixel(), 0.02)).about(x, y));
    }

    private void go(Viewport port) {
        Viewport.Area area = station == Station.ART ? artArea : plateArea;
        Viewport held = port.within(area);
        if (station == Station.ART) {
            artPort = held;
            artFits = false;
        } else {
            platePort = held;
            plateFits = false;
        }
        draw();
        moved.accept(this);
    }

    private void zoom(double x, double y, double factor) {
        Viewport.Area area = station == Station.ART ? artArea : plateArea;
        double farthest = 3 * Math.max(area.width() / port().width(), area.height() / port().height());
        double nearest = station == Station.ART ? NEAREST_ART_PIXELS : NEAREST_MILLIMETRES;
        go(port().zoomed(x, y, factor, nearest, farthest));
    }

    void show(LivePicture picture, LiveView view, Station of) {
        if (of == station) {
            imageView = view;
            image.setImage(Shown.image(picture, light));
            draw();
        }
    }

    void showLoupe(LivePicture picture) {
        loupeImage = Shown.image(picture, light);
        draw();
    }

    void look(Light shining, boolean inInches) {
        light = shining;
        inches = inInches;
        draw();
    }

    void mark(Marks over) {
        marks = over;
        draw();
    }

    /** Lays the loupe down, or takes it away. */
    void toggleLoupe() {
        loupeOn = !loupeOn;
        loupeImage = null;
        if (loupeOn) {
            loupeX = port().planeX(port().width() / 2.0);
            loupeY = port().planeY(port().height() / 2.0);
            loupeMoved.accept(this);
        }
        draw();
    }

    /** Moves the loupe, if it is there. */
    void layLoupe(double x, double y) {
        loupeX = x;
        loupeY = y;
        if (loupeOn) {
            loupeMoved.accept(this);
        }
        draw();
    }

    @Override
    protected void layoutChildren() {
        double width = Math.max(1, getWidth() - RULER);
        double height = Math.max(1, getHeight() - RULER);
        boolean other = width != window.getWidth() || height != window.getHeight();
        window.resizeRelocate(RULER, RULER, width, height);
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        if (other) {
            refit();
            if (present) {
                moved.accept(this);
            }
        }
        draw();
    }

    private void press(MouseEvent event) {
        requestFocus();
        pressX = dragX = event.getX() - RULER;
        pressY = dragY = event.getY() - RULER;
        dragging = false;
    }

    private void drag(MouseEvent event) {
        double x = event.getX() - RULER;
        double y = event.getY() - RULER;
        dragging = dragging || Math.hypot(x - pressX, y - pressY) > 3;
        if (!present || !dragging) {
            return;
        }
        if (hand == Hand.MOVE) {
            go(port().dragged(x - dragX, y - dragY));
        }
        dragX = x;
        dragY = y;
        draw();
    }

    private void release(MouseEvent event) {
        if (!present || hand == Hand.MOVE) {
            return;
        }
        double x = event.getX() - RULER;
        double y = event.getY() - RULER;
        Viewport port = port();
        if (hand == Hand.CROP && !dragging) {
            return;
        }
        Viewport.Area area = new Viewport.Area(
                port.planeX(Math.min(x, pressX)),
                port.planeY(Math.min(y, pressY)),
                Math.abs(x - pressX) * port.perPixel(),
                Math.abs(y - pressY) * port.perPixel());
        Hand how = hand;
        dragging = false;
        take(Hand.MOVE);
        done.accept(how, area);
    }

    private void point(MouseEvent event) {
        if (!present) {
            return;
        }
        double x = port().planeX(event.getX() - RULER);
        double y = port().planeY(event.getY() - RULER);
        if (loupeOn) {
            loupeX = x;
            loupeY = y;
            loupeMoved.accept(this);
            draw();
        }
        pointed.accept(x, y);
    }

    private void scroll(ScrollEvent event) {
        if (present && event.getDeltaY() != 0) {
            zoom(event.getX() - RULER, event.getY() - RULER, event.getDeltaY() > 0 ? NEARER : 1 / NEARER);
            event.consume();
        }
    }

    private void key(KeyEvent event) {
        if (!present || event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        Viewport port = port();
        double step = loupeOn ? 8 : MOVE_SHARE * Math.min(port.width(), port.height());
        switch (event.getCode()) {
            case LEFT -> push(-step, 0);
            case RIGHT -> push(step, 0);
            case UP -> push(0, -step);
            case DOWN -> push(0, step);
            case PLUS, ADD, EQUALS -> zoom(port.width() / 2.0, port.height() / 2.0, NEARER);
            case MINUS, SUBTRACT -> zoom(port.width() / 2.0, port.height() / 2.0, 1 / NEARER);
            case ESCAPE -> take(Hand.MOVE);
            case ENTER, SPACE -> pickAtLoupe();
            default -> {
                return;
            }
        }
        event.consume();
    }

    /** By keys, the loupe is the pointer. */
    private void pickAtLoupe() {
        if (loupeOn && (hand == Hand.PICK_WHITE || hand == Hand.PICK_BLACK)) {
            Hand how = hand;
            take(Hand.MOVE);
            done.accept(how, new Viewport.Area(loupeX, loupeY, 0, 0));
        }
    }

    private void push(double x, double y) {
        if (!loupeOn) {
            go(port().dragged(-x, -y));
            return;
        }
        loupeX += x * port().perPixel();
        loupeY += y * port().perPixel();
        loupeMoved.accept(this);
        pointed.accept(loupeX, loupeY);
        draw();
    }

    private void draw() {
        placeImage();
        PictureDrawing drawing = new PictureDrawing(canvas.getGraphicsContext2D(), light, inches);
        drawing.clear(canvas.getWidth(), canvas.getHeight());
        if (!present) {
            return;
        }
        Viewport port = port();
        if (station == Station.ART) {
            Optional<Viewport.Area> drawn = Optional.of(new Viewport.Area(
                            port.planeX(Math.min(dragX, pressX)),
                            port.planeY(Math.min(dragY, pressY)),
                            Math.abs(dragX - pressX) * port.perPixel(),
                            Math.abs(dragY - pressY) * port.perPixel()))
                    .filter(area -> dragging && hand == Hand.CROP);
            drawn.or(marks::crop).ifPresent(area -> drawing.crop(port, area));
        } else {
            drawing.plate(port, plateArea, marks.bevelMillimetres(), station);
            drawing.places(port, marks);
        }
        if (loupeOn) {
            drawing.loupe(port, loupeX, loupeY, loupeAcross(), loupeImage, station == Station.ART);
        }
        drawing.rulers(port, station == Station.ART);
        if (isFocused()) {
            drawing.focus(canvas.getWidth(), canvas.getHeight());
        }
    }

    private void placeImage() {
        LiveView seen = imageView;
        if (seen == null) {
            return;
        }
        Viewport port = port();
        image.setX(port.pixelX(seen.left()));
        image.setY(port.pixelY(seen.top()));
        image.setFitWidth(seen.width() * seen.perPixel() / port.perPixel());
        image.setFitHeight(seen.height() * seen.perPixel() / port.perPixel());
    }
}
