package greyground.desk.picture;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.desk.look.Pen;
import greyground.desk.look.RoomLight;
import greyground.desk.model.Viewport;
import javafx.scene.image.ImageView;
import javafx.scene.shape.Rectangle;
import javafx.scene.text.TextAlignment;

/** Another picture of the same place, left of a line that the hand moves; or all over while a key is held. */
public final class Against {
    private static final double REACH = 8;

    private final LaidPicture laid = new LaidPicture();
    private final Rectangle clip = new Rectangle();
    private String name = "";
    private double share = 0.5;
    private RoomLight light = new RoomLight(false);
    private boolean on;
    private boolean allOver;

    Against() {
        laid.node().setClip(clip);
        laid.node().setVisible(false);
    }

    ImageView node() {
        return laid.node();
    }

    /** Whether a line parts two pictures. */
    public boolean isOn() {
        return on;
    }

    /** Whether there is anything to compare with. */
    public boolean isSeen() {
        return (on || allOver) && laid.view() != null;
    }

    /** The other picture, and what it is called. */
    public void show(LivePicture other, LiveView of, String called) {
        name = called;
        laid.show(other, of, light);
    }

    void look(RoomLight shining) {
        light = shining;
        laid.look(shining);
    }

    /** Parts the picture by a line, or no more. */
    public void part(boolean wanted) {
        on = wanted;
        if (!wanted) {
            forget();
        }
    }

    /** Whether the other picture is seen all over while a key is held. */
    public boolean isHeld() {
        return allOver;
    }

    /** Shows the other picture all over, or no more. */
    public void hold(boolean wanted) {
        allOver = wanted;
    }

    void forget() {
        laid.forget();
        on = false;
        allOver = false;
    }

    /** Whether a place of the window lies on the line. */
    boolean isLine(Viewport port, double x) {
        return on && Math.abs(x - share * port.width()) < REACH;
    }

    void moveLine(Viewport port, double x) {
        share = Math.max(0.02, Math.min(0.98, x / port.width()));
    }

    void place(Viewport port) {
        laid.node().setVisible(isSeen());
        laid.place(port);
        clip.setWidth(allOver ? port.width() : share * port.width());
        clip.setHeight(port.height());
    }

    void draw(Pen pen, Viewport port, String other) {
        if (!isSeen()) {
            return;
        }
        if (allOver) {
            label(pen, name, 8, TextAlignment.LEFT);
            return;
        }
        double x = Math.rint(share * port.width()) + 0.5;
        pen.onAnything(light.copper(), 1.5, () -> pen.line(x, 0, x, port.height()));
        pen.stroke(light.copper(), 2);
        pen.ring(x, port.height() / 2.0, 7, light.field());
        label(pen, name, x - 8, TextAlignment.RIGHT);
        label(pen, other, x + 8, TextAlignment.LEFT);
    }

    private void label(Pen pen, String words, double x, TextAlignment align) {
        double width = Pen.width(words) + 12;
        double left = align == TextAlignment.LEFT ? x : x - width;
        pen.fill(light.panel(), left, 8, width, 22);
        pen.words(words, left + 6, 19, TextAlignment.LEFT, light.ink());
    }
}
