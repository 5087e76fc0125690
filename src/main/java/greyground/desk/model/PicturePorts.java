package greyground.desk.model;

/**
 * Which part of the art, and which part of the plate, the picture shows. Four stations share the plate's, so that going from one to the
 * next stays at the same place. What was shown whole stays whole when its size or the window's changes.
 */
public final class PicturePorts {
    private static final double PLATE_MARGIN_MILLIMETRES = 14;
    private static final double ART_MARGIN_SHARE = 1 / 40.0;
    private static final double NEAREST_MILLIMETRES = 0.002;
    private static final double NEAREST_ART_PIXELS = 0.05;
    private static final double PLACE_MILLIMETRES = 0.02;

    private final Plane art = new Plane();
    private final Plane plate = new Plane();

    /** One plane, how large it is and what is seen of it. */
    private static final class Plane {
        private Viewport port = new Viewport(0, 0, 1, 1, 1);
        private Viewport.Area area = new Viewport.Area(0, 0, 1, 1);
        private boolean whole = true;

        void resize(int width, int height, double margin) {
            port = whole ? Viewport.fitting(area.grown(margin), width, height) : port.resized(width, height);
        }
    }

    private Plane plane(Station station) {
        return station == Station.ART ? art : plate;
    }

    /** What is seen at a station: art in its pixels, the plate in millimetres. */
    public Viewport at(Station station) {
        return plane(station).port;
    }

    public Viewport.Area plateArea() {
        return plate.area;
    }

    public Viewport.Area artArea() {
        return art.area;
    }

    /** How large both are; {@link #resize} follows. */
    public void measure(double artWidth, double artHeight, double plateWidth, double plateHeight) {
        art.area = new Viewport.Area(0, 0, artWidth, artHeight);
        plate.area = new Viewport.Area(0, 0, plateWidth, plateHeight);
    }

    /** All of art that has not been seen yet, in a window of so many pixels. */
    public static Viewport wholeArt(int artWidth, int artHeight, int width, int height) {
        Viewport.Area area = new Viewport.Area(0, 0, artWidth, artHeight);
        return Viewport.fitting(area.grown(artWidth * ART_MARGIN_SHARE), width, height);
    }

    /** The window has so many pixels now. */
    public void resize(int width, int height) {
        art.resize(width, height, art.area.width() * ART_MARGIN_SHARE);
        plate.resize(width, height, PLATE_MARGIN_MILLIMETRES);
    }

    /** Shows all of a station's plane; {@link #resize} follows. */
    public void showWhole(Station station) {
        plane(station).whole = true;
    }

    /** What comes next is shown whole. */
    public void forget() {
        art.whole = true;
        plate.whole = true;
    }

    public void go(Station station, Viewport wanted) {
        Plane plane = plane(station);
        plane.port = wanted.within(plane.area);
        plane.whole = false;
    }

    /** Looks at a place of the plate, near enough to see it. */
    public void goToPlace(double x, double y) {
        Viewport present = plate.port;
        go(
                Station.COPPER,
                present.atScale(Math.min(present.perPixel(), PLACE_MILLIMETRES)).about(x, y));
    }

    /** Goes nearer or farther, while the place under a pixel stays there. */
    public void zoom(Station station, double x, double y, double factor) {
        Plane plane = plane(station);
        Viewport port = plane.port;
        double farthest = 3 * Math.max(plane.area.width() / port.width(), plane.area.height() / port.height());
        double nearest = station == Station.ART ? NEAREST_ART_PIXELS : NEAREST_MILLIMETRES;
        go(station, port.zoomed(x, y, factor, nearest, farthest));
    }

    /**
     * Shows a station's plane at its true size.
     *
     * @param screenDotsPerInch of the screen, in the window's units
     */
    public void trueSize(Station station, double screenDotsPerInch) {
        go(station, at(station).atScale(station == Station.ART ? 1 : Viewport.trueSize(screenDotsPerInch)));
    }
}
