package greyground.film.sheet;

import greyground.film.sheet.Mark.Bar;
import greyground.quantity.FilmPixels;
import greyground.raster.PixelRect;
import greyground.tone.ToneCurve;
import java.util.ArrayList;
import java.util.List;

/**
 * Two rows of fields below the plate: 21 greys of the art in even steps of lightness, from white to black, through the
 * picture's own curve and grain; and 11 coverages of the film in steps of 10 %, without the curve.
 */
public final class WedgeStrip {
    /** Distance of the strip's top from the plate's bottom edge. */
    static final double TOP_MILLIMETRES = 18;

    static final double WIDTH_MILLIMETRES = 126;

    /** Distance of the strip's bottom from the plate's bottom edge. */
    static final double BOTTOM_MILLIMETRES = 31;

    /** What is said of the strip of a picture's film. */
    public static final String WORDS = "wedge: upper row 21 greys of the art, L* 100 to 0 by 5, through the curve;"
            + " lower row film coverage without the curve, steps of 10 %";

    /** The same of the strip on a film that knows of no plate: {@code compose.TestPlateSheet} {@code evenLightness}. */
    public static final String WORDS_WITHOUT_CURVE =
            "wedge: upper row film coverage 0 to 100 % by 5, lower row 0 to 100 % by 10; no curve";

    private static final int GREYS = 21;
    private static final int COVERAGES = 11;
    private static final double STEP_MILLIMETRES = 6;
    private static final double FIELD_MILLIMETRES = 5.5;
    private static final double ROW_MILLIMETRES = 7;
    private static final double TICK_MILLIMETRES = 0.6;

    private WedgeStrip() {}

    static List<Patch> patches(FilmPixels pixels, PixelRect plate) {
        List<Patch> patches = new ArrayList<>();
        for (int step = 0; step < GREYS; step++) {
            double lightness = 100.0 * (GREYS - 1 - step) / (GREYS - 1);
            int code = (int) Math.round(ToneCurve.SOLID * luminance(lightness));
            patches.add(new Patch(field(pixels, plate, step, 0), new Patch.ArtGrey(code)));
        }
        for (int step = 0; step < COVERAGES; step++) {
            int coverage = (int) Math.round((double) ToneCurve.SOLID * step / (COVERAGES - 1));
            patches.add(new Patch(field(pixels, plate, step, 1), new Patch.FilmCoverage(coverage)));
        }
        return patches;
    }

    /** A short tick under the middle of every field, so that clear fields can be found. */
    static List<Mark> ticks(FilmPixels pixels, PixelRect plate) {
        int line = Math.max(1, pixels.resolution().pixels(25.4 / 288));
        int gap = pixels.down(0.2);
        List<Mark> marks = new ArrayList<>();
        for (Patch patch : patches(pixels, plate)) {
            PixelRect box = patch.box();
            marks.add(new Bar(new PixelRect(
                    box.left() + (box.width() - line) / 2,
                    box.bottom() + gap,
                    line,
                    Math.max(1, pixels.down(TICK_MILLIMETRES)))));
        }
        return marks;
    }

    private static PixelRect field(FilmPixels pixels, PixelRect plate, int step, int row) {
        return new PixelRect(
                plate.left() + pixels.across(step * STEP_MILLIMETRES),
                plate.bottom() + pixels.down(TOP_MILLIMETRES + row * ROW_MILLIMETRES),
                pixels.across(FIELD_MILLIMETRES),
                pixels.down(FIELD_MILLIMETRES));
    }

    /** CIE 15:2004, 8.2.1.1, inverted; above L* 8 a cube, below it the straight part with slope 27/24389. */
    private static double luminance(double lightness) {
        double root = (lightness + 16) / 116;
        return lightness > 8 ? root * root * root : lightness * 27 / 24_389;
    }
}
