package greyground.film;

import greyground.film.Mark.Bar;
import greyground.film.Mark.Ring;
import greyground.quantity.Resolution;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;

/**
 * Lines and marks round one plate, every edge on a whole film pixel, drawn outside the art.
 *
 * <p>Register marks, rulers and the F stand at distances from the plate's edge that depend on nothing else, so that films of
 * plates of one size register. The line is a quarter point, 25.4/288 mm; crosses are 10 mm long, their circle 5 mm across,
 * ticks 5 mm and 3 mm (common practice, no source).
 */
final class PlateMarks {
    /** Distance of a register mark's middle from both plate edges at its corner. */
    static final double REGISTER_MILLIMETRES = 12;

    /** Distance of a ruler's foot from the plate's edge. */
    static final double RULER_MILLIMETRES = 18;

    /** How far the tallest ruler tick reaches. */
    static final double RULER_TICK_MILLIMETRES = 4;

    /** A ruler's length, in both directions. */
    static final int RULER_LENGTH_MILLIMETRES = 100;

    private static final double QUARTER_POINT_MILLIMETRES = 25.4 / 288;
    private static final double CROSS_MILLIMETRES = 10;
    private static final double CIRCLE_MILLIMETRES = 5;
    private static final double TICK_MILLIMETRES = 5;
    private static final double BEVEL_TICK_MILLIMETRES = 3;
    private static final double CLEAR_OF_BLEED_MILLIMETRES = 1;

    private final Resolution resolution;
    private final PixelRect plate;
    private final int line;
    private final List<Mark> marks = new ArrayList<>();

    private PlateMarks(Resolution resolution, PixelRect plate) {
        this.resolution = resolution;
        this.plate = plate;
        this.line = Math.max(1, resolution.pixels(QUARTER_POINT_MILLIMETRES));
    }

    /** Ticks that carry the plate's edges, its middles and its bevel, starting just outside the bleed. */
    static List<Mark> ticks(Resolution resolution, PixelRect plate, double bleedMillimetres, double bevelMillimetres) {
        PlateMarks drawn = new PlateMarks(resolution, plate);
        int from = resolution.pixels(bleedMillimetres + CLEAR_OF_BLEED_MILLIMETRES);
        int tick = resolution.pixels(TICK_MILLIMETRES);
        int line = drawn.line;
        // A corner tick's inner side is the plate's edge itself.
        drawn.acrossTicks(-line, from, tick);
        drawn.acrossTicks(plate.width(), from, tick);
        drawn.downTicks(-line, from, tick);
        drawn.downTicks(plate.height(), from, tick);
        drawn.acrossTicks((plate.width() - line) / 2, from, tick);
        drawn.downTicks((plate.height() - line) / 2, from, tick);
        int bevel = resolution.pixels(bevelMillimetres);
        if (bevel > 2 * line) {
            int bevelTick = resolution.pixels(BEVEL_TICK_MILLIMETRES);
            drawn.acrossTicks(bevel, from, bevelTick);
            drawn.acrossTicks(plate.width() - bevel - line, from, bevelTick);
            drawn.downTicks(bevel, from, bevelTick);
            drawn.downTicks(plate.height() - bevel - line, from, bevelTick);
        }
        return drawn.marks;
    }

    /** Four register marks, one off each corner; each is a list of two lines and a circle. */
    static List<Mark> register(Resolution resolution, PixelRect plate) {
        PlateMarks drawn = new PlateMarks(resolution, plate);
        int away = resolution.pixels(REGISTER_MILLIMETRES);
        for (int x : new int[] {plate.left() - away, plate.right() + away}) {
            for (int y : new int[] {plate.top() - away, plate.bottom() + away}) {
                drawn.cross(x, y);
            }
        }
        return drawn.marks;
    }

    /** A ruler above the plate and one left of it, both from the plate's top left corner on. */
    static List<Mark> rulers(Resolution resolution, PixelRect plate) {
        PlateMarks drawn = new PlateMarks(resolution, plate);
        int foot = resolution.pixels(RULER_MILLIMETRES);
        int length = resolution.pixels(RULER_LENGTH_MILLIMETRES);
        int line = drawn.line;
        drawn.bar(plate.left(), plate.top() - foot, length + line, line);
        drawn.bar(plate.left() - foot, plate.top(), line, length + line);
        for (int millimetre = 0; millimetre <= RULER_LENGTH_MILLIMETRES; millimetre++) {
            double height = millimetre % 10 == 0 ? RULER_TICK_MILLIMETRES : millimetre % 5 == 0 ? 3 : 2;
            int tick = resolution.pixels(height);
            int along = resolution.pixels(millimetre);
            drawn.bar(plate.left() + along, plate.top() - foot - tick, line, tick);
            drawn.bar(plate.left() - foot - tick, plate.top() + along, tick, line);
        }
        return drawn.marks;
    }

    /** The letter F, 4 mm by 6 mm, right of the plate's top right corner: it shows which way the film faces. */
    static List<Mark> asymmetric(Resolution resolution, PixelRect plate) {
        PlateMarks drawn = new PlateMarks(resolution, plate);
        int left = plate.right() + resolution.pixels(RULER_MILLIMETRES);
        int stroke = resolution.pixels(1);
        int height = resolution.pixels(6);
        drawn.bar(left, plate.top(), stroke, height);
        drawn.bar(left + stroke, plate.top(), resolution.pixels(4) - stroke, stroke);
        drawn.bar(left + stroke, plate.top() + resolution.pixels(2.5), resolution.pixels(3) - stroke, stroke);
        return drawn.marks;
    }

    /** Upright ticks above and below the plate, {@code along} pixels from its left edge. */
    private void acrossTicks(int along, int from, int tick) {
        bar(plate.left() + along, plate.top() - from - tick, line, tick);
        bar(plate.left() + along, plate.bottom() + from, line, tick);
    }

    private void downTicks(int along, int from, int tick) {
        bar(plate.left() - from - tick, plate.top() + along, tick, line);
        bar(plate.right() + from, plate.top() + along, tick, line);
    }

    private void cross(int x, int y) {
        int half = resolution.pixels(CROSS_MILLIMETRES / 2);
        int back = line / 2;
        bar(x - half, y - back, 2 * half, line);
        bar(x - back, y - half, line, 2 * half);
        // Of the line's own parity, so that the circle's middle and the cross's agree to the half pixel.
        int across = 2 * resolution.pixels(CIRCLE_MILLIMETRES / 2) + line % 2;
        int radius = across / 2;
        marks.add(new Ring(new PixelRect(x - radius, y - radius, across, across), line));
    }

    private void bar(int left, int top, int width, int height) {
        marks.add(new Bar(new PixelRect(left, top, width, height)));
    }
}
