package greyground.desk.look;

import javafx.scene.canvas.Canvas;
import javafx.scene.layout.Region;

/** Something drawn by hand that may have the keys; drawn anew when its size, its light or its focus changes. */
public abstract class Drawn extends Region {
    /** What it is drawn on. */
    protected final Canvas canvas = new Canvas();

    /** The light it is seen in. */
    protected RoomLight light = new RoomLight(false);

    protected Drawn(String id) {
        setId(id);
        setFocusTraversable(true);
        focusedProperty().addListener((property, was, is) -> draw());
    }

    public final void look(RoomLight shining) {
        light = shining;
        draw();
    }

    @Override
    protected void layoutChildren() {
        canvas.setWidth(getWidth());
        canvas.setHeight(getHeight());
        draw();
    }

    public final void draw() {
        Pen pen = new Pen(canvas, light);
        draw(pen);
        if (isFocused()) {
            pen.frame();
        }
    }

    /** Draws it, but for the frame of what has the keys. */
    protected abstract void draw(Pen pen);
}
