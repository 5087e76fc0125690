package greyground.desk.look;

import greyground.app.sight.LivePicture;
import greyground.desk.model.Viewport;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Region;
import javafx.scene.shape.Rectangle;
import org.jspecify.annotations.Nullable;

/** A finished picture to be looked at: dragged, brought nearer, shown whole. Lengths are its own pixels. */
public final class FlatPicture extends Region {
    private static final double NEARER = 1.25;
    private static final double MOVE_SHARE = 0.125;
    private static final double NEAREST = 0.1;
    private static final double MARGIN_SHARE = 1 / 50.0;

    private final ImageView image = new ImageView();
    private @Nullable LivePicture picture;
    private Viewport port = new Viewport(0, 0, 1, 1, 1);
    private RoomLight light = new RoomLight(false);
    private boolean whole = true;
    private double dragX;
    private double dragY;

    public FlatPicture(String name) {
        getStyleClass().addAll("bench", "flat-picture");
        setFocusTraversable(true);
        setAccessibleText(name);
        setAccessibleHelp("Arrow keys move it, plus and minus bring it nearer, A shows all");
        image.setPreserveRatio(false);
        image.setSmooth(true);
        image.setMouseTransparent(true);
        Rectangle clip = new Rectangle();
        clip.widthProperty().bind(widthProperty());
        clip.heightProperty().bind(heightProperty());
        setClip(clip);
        getChildren().add(image);
        setMinSize(120, 80);
        setOnMousePressed(press -> {
            requestFocus();
            dragX = press.getX();
            dragY = press.getY();
        });
        setOnMouseDragged(drag -> {
            go(port.dragged(drag.getX() - dragX, drag.getY() - dragY));
            dragX = drag.getX();
            dragY = drag.getY();
        });
        setOnScroll(scroll -> {
            if (scroll.getDeltaY() != 0) {
                zoom(scroll.getX(), scroll.getY(), scroll.getDeltaY() > 0 ? NEARER : 1 / NEARER);
                scroll.consume();
            }
        });
        setOnKeyPressed(this::key);
    }

    /** Shows another picture, whole; the same one stays where it is. */
    public void show(LivePicture shown) {
        if (!shown.equals(picture)) {
            picture = shown;
            image.setImage(light.image(shown));
            whole = true;
            requestLayout();
        }
    }

    public void look(RoomLight shining) {
        light = shining;
        if (picture != null) {
            image.setImage(light.image(picture));
        }
    }

    private Viewport.Area area() {
        LivePicture shown = picture;
        return shown == null ? new Viewport.Area(0, 0, 1, 1) : new Viewport.Area(0, 0, shown.width(), shown.height());
    }

    private void go(Viewport wanted) {
        port = wanted.within(area());
        whole = false;
        place();
    }

    private void zoom(double x, double y, double factor) {
        double farthest = 3 * Math.max(area().width() / port.width(), area().height() / port.height());
        go(port.zoomed(x, y, factor, NEAREST, farthest));
    }

    private void key(KeyEvent event) {
        if (event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        double step = MOVE_SHARE * Math.min(port.width(), port.height());
        double middleX = port.width() / 2.0;
        double middleY = port.height() / 2.0;
        switch (event.getCode()) {
            case LEFT -> go(port.dragged(step, 0));
            case RIGHT -> go(port.dragged(-step, 0));
            case UP -> go(port.dragged(0, step));
            case DOWN -> go(port.dragged(0, -step));
            case PLUS, ADD, EQUALS -> zoom(middleX, middleY, NEARER);
            case MINUS, SUBTRACT -> zoom(middleX, middleY, 1 / NEARER);
            case A -> {
                whole = true;
                requestLayout();
            }
            default -> {
                return;
            }
        }
        event.consume();
    }

    @Override
    protected void layoutChildren() {
        int width = Math.max(1, (int) getWidth());
        int height = Math.max(1, (int) getHeight());
        Viewport.Area area = area();
        port = whole
                ? Viewport.fitting(area.grown(MARGIN_SHARE * Math.max(area.width(), area.height())), width, height)
                : port.resized(width, height);
        place();
    }

    private void place() {
        Viewport.Area area = area();
        image.setX(port.pixelX(0));
        image.setY(port.pixelY(0));
        image.setFitWidth(area.width() / port.perPixel());
        image.setFitHeight(area.height() / port.perPixel());
    }
}
