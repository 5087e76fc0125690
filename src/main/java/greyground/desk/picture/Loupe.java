package greyground.desk.picture;

import greyground.app.sight.LiveView;
import greyground.desk.model.Station;
import greyground.desk.model.Viewport;
import javafx.scene.image.Image;
import org.jspecify.annotations.Nullable;

/** The loupe: whether it lies on the picture, where, and what it shows. */
public final class Loupe {
    /** How wide it is, in the window's pixels. */
    public static final int SIDE = 240;

    private static final double MILLIMETRES = 2;
    private static final double ART_PIXELS = 80;

    private boolean on;
    private double x;
    private double y;
    private @Nullable Image image;

    boolean isOn() {
        return on;
    }

    public double x() {
        return x;
    }

    public double y() {
        return y;
    }

    /** What it shows; null until that has been computed. */
    @Nullable
    Image image() {
        return image;
    }

    void toggle() {
        on = !on;
        image = null;
    }

    void lay(double planeX, double planeY) {
        x = planeX;
        y = planeY;
    }

    void layInTheMiddleOf(Viewport port) {
        lay(port.planeX(port.width() / 2.0), port.planeY(port.height() / 2.0));
    }

    void show(@Nullable Image seen) {
        image = seen;
    }

    /** How much it sees, in the unit of a station's plane. */
    static double across(Station station) {
        return station == Station.ART ? ART_PIXELS : MILLIMETRES;
    }

    LiveView view(Station station, double outputScale) {
        double across = across(station);
        int pixels = (int) Math.round(SIDE * outputScale);
        return new LiveView(x - across / 2, y - across / 2, across / pixels, pixels, pixels);
    }
}
