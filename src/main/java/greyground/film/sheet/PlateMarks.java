package greyground.film.sheet;

import greyground.film.sheet.Mark.Bar;
import greyground.film.sheet.Mark.Ring;
import greyground.quantity.FilmPixels;
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

    private final FilmPixels pixels;
    private final PixelRect plate;
    private final int line;
    private final List<Mark> marks = new ArrayList<>();

    private PlateMarks(FilmPixels pixels, PixelRect plate) {
        this.pixels = pixels;
        this.plate = plate;
        this.line = Math.max(1, pixels.resolution().pixels(QUARTER_POINT_MILLIMETRES));
    }

    /** Ticks that carry the plate's edges, its middles and its bevel, starting just outside the bleed. */
    static List<Mark> ticks(FilmPixels pixels, PixelRect plate, double bleedMillimetres, double bevelMillimetres) {
        PlateMarks drawn = new PlateMarks(pixels, plate);
        int line = drawn.line;
        // A corner tick's inner side is the plate's edge itself.
        drawn.uprightTicks(-line, bleedMillimetres, TICK_MILLIMETRES);
        drawn.uprightTicks(plate.width(), bleedMillimetres, TICK_MILLIMETRES);
        drawn.levelTicks(-line, bleedMillimetres, TICK_MILLIMETRES);
        drawn.levelTicks(plate.height(), bleedMillimetres, TICK_MILLIMETRES);
        drawn.uprightTicks((plate.width() - line) / 2, bleedMillimetres, TICK_MILLIMETRES);
        drawn.levelTicks((plate.height() - line) / 2, bleedMillimetres, TICK_MILLIMETRES);
        int bevelAcross = pixels.across(bevelMillimetres);
        int bevelDown = pixels.down(bevelMillimetres);
        if (Math.min(bevelAcross, bevelDown) > 2 * line) {
            drawn.uprightTicks(bevelAcross, bleedMillimetres, BEVEL_TICK_MILLIMETRES);
            drawn.uprightTicks(plate.width() - bevelAcross - line, bleedMillimetres, BEVEL_TICK_MILLIMETRES);
            drawn.levelTicks(bevelDown, bleedMillimetres, BEVEL_TICK_MILLIMETRES);
            drawn.levelTicks(plate.height() - bevelDown - line, bleedMillimetres, BEVEL_TICK_MILLIMETRES);
        }
        return drawn.marks;
    }

    /** Four register marks, one off each corner; each is a list of two lines and a circle. */
    static List<Mark> register(FilmPixels pixels, PixelRect plate) {
        PlateMarks drawn = new PlateMarks(pixels, plate);
        int across = pixels.across(REGISTER_MILLIMETRES);
        int down = pixels.down(REGISTER_MILLIMETRES);
        for (int x : new int[] {plate.left() - across, plate.right() + across}) {
            for (int y : new int[] {plate.top() - down, plate.bottom() + down}) {
                drawn.cross(x, y);
            }
        }
        return drawn.marks;
    }

    /** A ruler above the plate and one left of it, both from the plate's top left corner on. */
    static List<Mark> rulers(FilmPixels pixels, PixelRect plate) {
        return rulers(pixels, plate, 0);
    }

    /** The same with the ruler above the plate begun so far right of its corner, or left where negative. */
    static List<Mark> rulers(FilmPixels pixels, PixelRect plate, double fromMillimetres) {
        PlateMarks drawn = new PlateMarks(pixels, plate);
        int first = plate.left() + pixels.across(fromMillimetres);
        int above = plate.top() - pixels.down(RULER_MILLIMETRES);
        int before = plate.left() - pixels.across(RULER_MILLIMETRES);
        int line = drawn.line;
        drawn.bar(first, above, pixels.across(RULER_LENGTH_MILLIMETRES) + line, line);
        drawn.bar(before, plate.top(), line, pixels.down(RULER_LENGTH_MILLIMETRES) + line);
        for (int millimetre = 0; millimetre <= RULER_LENGTH_MILLIMETRES; millimetre++) {
            double height = millimetre % 10 == 0 ? RULER_TICK_MILLIMETRES : millimetre % 5 == 0 ? 3 : 2;
            int upright = pixels.down(height);
            int level = pixels.across(height);
            drawn.bar(first + pixels.across(millimetre), above - upright, line, upright);
            drawn.bar(before - level, plate.top() + pixels.down(millimetre), level, line);
        }
        return drawn.marks;
    }

    /** The letter F, 4 mm by 6 mm, right of the plate's top right corner: it shows which way the film faces. */
    static List<Mark> asymmetric(FilmPixels pixels, PixelRect plate) {
        PlateMarks drawn = new PlateMarks(pixels, plate);
        int left = plate.right() + pixels.across(RULER_MILLIMETRES);
        int upright = pixels.across(1);
        int level = pixels.down(1);
        drawn.bar(left, plate.top(), upright, pixels.down(6));
        drawn.bar(left + upright, plate.top(), pixels.across(4) - upright, level);
        drawn.bar(left + upright, plate.top() + pixels.down(2.5), pixels.across(3) - upright, level);
        return drawn.marks;
    }

    /** A number in bars, each digit half as wide as it is high, from a left edge on. */
    static List<Mark> number(FilmPixels pixels, int left, int top, double highMillimetres, String digits) {
        PlateMarks drawn = new PlateMarks(pixels, new PixelRect(left, top, 1, 1));
        int high = pixels.down(highMillimetres);
        int wide = pixels.across(highMillimetres / 2);
        int level = Math.max(1, pixels.down(highMillimetres / 8));
        int upright = Math.max(1, pixels.across(highMillimetres / 8));
        int at = left;
        for (int i = 0; i < digits.length(); i++) {
            char digit = digits.charAt(i);
            int middle = top + (high - level) / 2;
            int right = at + wide - upright;
            int[][] strokes = {
                {at, top, wide, level},
                {at, top, upright, middle + level - top},
                {right, top, upright, middle + level - top},
                {at, middle, wide, level},
                {at, middle, upright, top + high - middle},
                {right, middle, upright, top + high - middle},
                {at, top + high - level, wide, level}
            };
            for (int stroke = 0; stroke < strokes.length; stroke++) {
                if (BarDigits.has(digit, stroke)) {
                    drawn.bar(strokes[stroke][0], strokes[stroke][1], strokes[stroke][2], strokes[stroke][3]);
                }
            }
            at += pixels.across(0.7 * highMillimetres);
        }
        return drawn.marks;
    }

    /** The outline of a rectangle, its lines outside it. */
    static List<Mark> frame(FilmPixels pixels, PixelRect inside) {
        PlateMarks drawn = new PlateMarks(pixels, inside);
        int line = drawn.line;
        drawn.bar(inside.left() - line, inside.top() - line, inside.width() + 2 * line, line);
        drawn.bar(inside.left() - line, inside.bottom(), inside.width() + 2 * line, line);
        drawn.bar(inside.left() - line, inside.top(), line, inside.height());
        drawn.bar(inside.right(), inside.top(), line, inside.height());
        return drawn.marks;
    }

    /** Upright ticks above and below the plate, {@code along} pixels from its left edge. */
    private void uprightTicks(int along, double bleedMillimetres, double lengthMillimetres) {
        int from = pixels.down(bleedMillimetres + CLEAR_OF_BLEED_MILLIMETRES);
        int tick = pixels.down(lengthMillimetres);
        bar(plate.left() + along, plate.top() - from - tick, line, tick);
        bar(plate.left() + along, plate.bottom() + from, line, tick);
    }

    private void levelTicks(int along, double bleedMillimetres, double lengthMillimetres) {
        int from = pixels.across(bleedMillimetres + CLEAR_OF_BLEED_MILLIMETRES);
        int tick = pixels.across(lengthMillimetres);
        bar(plate.left() - from - tick, plate.top() + along, tick, line);
        bar(plate.right() + from, plate.top() + along, tick, line);
    }

    private void cross(int x, int y) {
        int halfAcross = pixels.across(CROSS_MILLIMETRES / 2);
        int halfDown = pixels.down(CROSS_MILLIMETRES / 2);
        int back = line / 2;
        bar(x - halfAcross, y - back, 2 * halfAcross, line);
        bar(x - back, y - halfDown, line, 2 * halfDown);
        // Of the line's own parity, so that the circle's middle and the cross's agree to the half pixel.
        int across = 2 * pixels.across(CIRCLE_MILLIMETRES / 2) + line % 2;
        int down = 2 * pixels.down(CIRCLE_MILLIMETRES / 2) + line % 2;
        marks.add(new Ring(new PixelRect(x - across / 2, y - down / 2, across, down), line));
    }

    private void bar(int left, int top, int width, int height) {
        marks.add(new Bar(new PixelRect(left, top, width, height)));
    }
}
