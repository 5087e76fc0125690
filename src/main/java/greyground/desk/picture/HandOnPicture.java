package greyground.desk.picture;

import greyground.desk.model.CropFrame;
import greyground.desk.model.Hand;
import greyground.desk.model.Viewport;
import greyground.quantity.Offset;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javafx.scene.Cursor;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import javafx.scene.input.ScrollEvent;

/** What pointer and keys do on the picture: move it, bring it nearer, lay the loupe, pick a tone, draw or pull a fragment, draw a level line. */
public final class HandOnPicture {
    private static final double NEARER = 1.25;
    private static final double MOVE_SHARE = 0.125;

    /** How far from a fragment's grip the hand may press, in the window's pixels. */
    private static final double GRIP_REACH = 9;

    private final PictureView view;
    private final BiConsumer<Double, Double> pointed;
    private Hand hand = Hand.MOVE;
    private double pressX;
    private double pressY;
    private double dragX;
    private double dragY;
    private boolean dragging;
    private boolean parting;
    private Optional<CropFrame.Grip> grip = Optional.empty();
    private double proportion;
    private final DrawnPath path = new DrawnPath();
    private BiConsumer<Hand, Viewport.Area> done = (how, where) -> {};
    private BiConsumer<Hand, List<Offset>> drawn = (how, points) -> {};
    private Consumer<Hand> taken = tool -> {};

    HandOnPicture(PictureView view, BiConsumer<Double, Double> pointed) {
        this.view = view;
        this.pointed = pointed;
        view.setOnMousePressed(this::press);
        view.setOnMouseDragged(this::drag);
        view.setOnMouseReleased(this::release);
        view.setOnMouseMoved(this::point);
        view.setOnScroll(this::scroll);
        view.setOnKeyPressed(this::key);
    }

    /** Hears what was picked or drawn, and where. */
    public void whenDone(BiConsumer<Hand, Viewport.Area> hears) {
        done = done.andThen(hears);
    }

    /** Hears which way was drawn over the plate, in millimetres from its top left. */
    public void whenDrawn(BiConsumer<Hand, List<Offset>> hears) {
        drawn = drawn.andThen(hears);
    }

    /** Hears which tool is in the hand. */
    public void whenTaken(Consumer<Hand> hears) {
        taken = taken.andThen(hears);
    }

    /** How wide the brush is. */
    public void brush(double millimetres) {
        path.brush(millimetres);
        view.draw();
    }

    /** Takes up a tool; {@link Hand#MOVE} lays it down. */
    public void take(Hand chosen) {
        hand = chosen;
        path.clear();
        view.setCursor(chosen == Hand.MOVE ? Cursor.DEFAULT : Cursor.CROSSHAIR);
        taken.accept(chosen);
        view.draw();
    }

    /** Keeps a fragment at a proportion while it is drawn or pulled; 0 for any. */
    public void keep(double widthOverHeight) {
        proportion = widthOverHeight;
    }

    /** The fragment that is being drawn or pulled. */
    Optional<Viewport.Area> drawn() {
        return !dragging
                ? Optional.empty()
                : hand == Hand.CROP
                        ? Optional.of(drawnCrop(dragX, dragY))
                        : pulled(dragX, dragY).map(CropFrame::area);
    }

    /** The line that is being drawn along what should be level: its two ends, in pixels of the view. */
    Optional<double[]> line() {
        return dragging && hand == Hand.LEVEL
                ? Optional.of(new double[] {pressX, pressY, dragX, dragY})
                : Optional.empty();
    }

    /** Draws what is being drawn over the plate. */
    void draw(PictureDrawing drawing, Viewport port) {
        if (dragging && hand.isBox()) {
            drawing.box(port, spanned(dragX, dragY), hand == Hand.ELLIPSE);
        } else if (hand.isBrush()) {
            drawing.brush(port, path);
        } else if (hand == Hand.POLYGON) {
            drawing.corners(port, path);
        }
    }

    private Optional<CropFrame> pulled(double x, double y) {
        double perPixel = view.port().perPixel();
        return grip.flatMap(held -> view.cropFrame()
                .map(frame -> frame.pulled(held, (x - pressX) * perPixel, (y - pressY) * perPixel, proportion)));
    }

    private Viewport.Area drawnCrop(double x, double y) {
        Viewport.Area free = spanned(x, y);
        if (proportion == 0 || free.width() == 0 || free.height() == 0) {
            return free;
        }
        // The longer way of the hand decides; the corner where it was pressed stays.
        double width = Math.max(free.width(), free.height() * proportion);
        double height = width / proportion;
        return new Viewport.Area(
                x < pressX ? free.left() + free.width() - width : free.left(),
                y < pressY ? free.top() + free.height() - height : free.top(),
                width,
                height);
    }

    /** From where it was pressed to here. */
    private Viewport.Area spanned(double x, double y) {
        Viewport port = view.port();
        return new Viewport.Area(
                port.planeX(Math.min(x, pressX)),
                port.planeY(Math.min(y, pressY)),
                Math.abs(x - pressX) * port.perPixel(),
                Math.abs(y - pressY) * port.perPixel());
    }

    private static double x(MouseEvent event) {
        return event.getX();
    }

    private static double y(MouseEvent event) {
        return event.getY();
    }

    private void press(MouseEvent event) {
        view.requestFocus();
        pressX = dragX = x(event);
        pressY = dragY = y(event);
        dragging = false;
        grip = Optional.empty();
        parting = view.against().isLine(view.port(), pressX);
        if (view.isPresent() && hand.isBrush()) {
            path.begin(DrawnPath.at(view.port(), pressX, pressY));
            view.draw();
        } else if (view.isPresent()
                && hand == Hand.POLYGON
                && path.corner(
                        DrawnPath.at(view.port(), pressX, pressY), view.port().perPixel())) {
            finishPath(true);
        }
        if (hand == Hand.MOVE && !parting) {
            Viewport port = view.port();
            double atX = port.planeX(pressX);
            double atY = port.planeY(pressY);
            double reach = GRIP_REACH * port.perPixel();
            grip = view.cropFrame()
                    .flatMap(frame -> frame.at(atX, atY, reach)
                            .or(() -> frame.cuts() && frame.holds(atX, atY) && event.isShiftDown()
                                    ? Optional.of(CropFrame.Grip.MIDDLE)
                                    : Optional.empty()));
        }
    }

    private void drag(MouseEvent event) {
        double x = x(event);
        double y = y(event);
        dragging = dragging || Math.hypot(x - pressX, y - pressY) > 3;
        if (!view.isPresent() || !dragging) {
            return;
        }
        if (parting) {
            view.against().moveLine(view.port(), x);
        } else if (hand.isBrush()) {
            path.goOn(DrawnPath.at(view.port(), x, y));
        } else if (hand == Hand.MOVE && grip.isEmpty()) {
            view.go(view.port().dragged(x - dragX, y - dragY));
        }
        dragX = x;
        dragY = y;
        view.draw();
    }

    private void release(MouseEvent event) {
        double x = x(event);
        double y = y(event);
        boolean draws = hand == Hand.CROP || hand == Hand.LEVEL || hand.isBox();
        if (!view.isPresent() || (draws && !dragging)) {
            return;
        }
        if (parting) {
            parting = false;
            dragging = false;
        } else if (hand.isBrush()) {
            finishPath(false);
        } else if (hand == Hand.POLYGON) {
            view.draw();
        } else if (hand == Hand.MOVE) {
            Optional<CropFrame> pulled = dragging ? pulled(x, y) : Optional.empty();
            dragging = false;
            grip = Optional.empty();
            pulled.ifPresent(frame -> done.accept(Hand.CROP, frame.area()));
        } else if (hand == Hand.LEVEL) {
            Viewport port = view.port();
            double across = (x - pressX) * port.perPixel();
            double down = (y - pressY) * port.perPixel();
            finish(new Viewport.Area(port.planeX(pressX), port.planeY(pressY), across, down));
        } else {
            finish(hand == Hand.CROP ? drawnCrop(x, y) : spanned(x, y));
        }
    }

    private void finish(Viewport.Area area) {
        Hand how = hand;
        dragging = false;
        take(Hand.MOVE);
        done.accept(how, area);
    }

    /** Gives on what was drawn; a shape puts its tool down, a brush stays in the hand. */
    private void finishPath(boolean putDown) {
        Hand how = hand;
        List<Offset> points = path.points();
        dragging = false;
        path.clear();
        if (putDown) {
            take(Hand.MOVE);
        }
        view.draw();
        drawn.accept(how, points);
    }

    private void point(MouseEvent event) {
        if (view.isPresent() && (hand.isBrush() || hand == Hand.POLYGON)) {
            path.point(DrawnPath.at(view.port(), x(event), y(event)));
            view.draw();
        }
        if (view.isPresent()) {
            double x = view.port().planeX(x(event));
            double y = view.port().planeY(y(event));
            if (view.loupeOn()) {
                view.layLoupe(x, y);
            }
            pointed.accept(x, y);
        }
    }

    private void scroll(ScrollEvent event) {
        if (view.isPresent() && event.getDeltaY() != 0) {
            view.zoom(event.getX(), event.getY(), event.getDeltaY() > 0 ? NEARER : 1 / NEARER);
            event.consume();
        }
    }

    private void key(KeyEvent event) {
        if (!view.isPresent() || event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        Viewport port = view.port();
        double step = view.loupeOn() ? 8 : MOVE_SHARE * Math.min(port.width(), port.height());
        switch (event.getCode()) {
            case LEFT -> push(-step, 0);
            case RIGHT -> push(step, 0);
            case UP -> push(0, -step);
            case DOWN -> push(0, step);
            case PLUS, ADD, EQUALS -> view.zoom(port.width() / 2.0, port.height() / 2.0, NEARER);
            case MINUS, SUBTRACT -> view.zoom(port.width() / 2.0, port.height() / 2.0, 1 / NEARER);
            case ESCAPE -> take(Hand.MOVE);
            case ENTER, SPACE -> useAtLoupe();
            case BACK_SPACE -> {
                path.back();
                view.draw();
            }
            default -> {
                return;
            }
        }
        event.consume();
    }

    /** By keys, the loupe is the pointer: it picks, dabs with the brush, or sets a corner; without it a shape is closed. */
    private void useAtLoupe() {
        Viewport port = view.port();
        if (hand.isBrush() && view.loupeOn()) {
            path.begin(atLoupe(port));
            finishPath(false);
        } else if (hand == Hand.POLYGON && view.loupeOn()) {
            if (path.corner(atLoupe(port), port.perPixel())) {
                finishPath(true);
            }
            view.draw();
        } else if (hand == Hand.POLYGON && path.isClosed()) {
            finishPath(true);
        } else if (view.loupeOn() && (hand == Hand.PICK_WHITE || hand == Hand.PICK_BLACK)) {
            finish(new Viewport.Area(view.loupe().x(), view.loupe().y(), 0, 0));
        }
    }

    private Offset atLoupe(Viewport port) {
        return DrawnPath.at(
                port, port.pixelX(view.loupe().x()), port.pixelY(view.loupe().y()));
    }

    private void push(double x, double y) {
        if (!view.loupeOn()) {
            view.go(view.port().dragged(-x, -y));
            return;
        }
        double perPixel = view.port().perPixel();
        double atX = view.loupe().x() + x * perPixel;
        double atY = view.loupe().y() + y * perPixel;
        view.layLoupe(atX, atY);
        pointed.accept(atX, atY);
    }
}
