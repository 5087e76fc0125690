package greyground.film.sheet;

import greyground.film.job.Job;
import greyground.film.job.Placing.Strip;
import greyground.film.sheet.Mark.Bar;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.raster.PixelRect;
import greyground.tone.ToneCurve;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * 32 fields beside or on the plate: 21 greys of the art in even steps of lightness, from white to black, through the picture's own
 * curve and grain; and 11 coverages of the film in steps of 10 %, without the curve. Each has a row of its own where there is room, else they
 * follow each other row by row. Numbered fields carry their numbers on film and print.
 *
 * @param place beside the plate, on an offcut, in the plate's margin, or nowhere
 * @param words what the film says of it, one line; may be empty
 * @param perRow most fields in a row, 1 or more
 * @param leftMillimetres how far right of the plate's left edge the first field begins
 * @param bevelMillimetres that fields on the plate keep clear of
 * @param number of the offcut, in digits; empty where there is none
 */
public record WedgeStrip(
        Strip place, String words, int perRow, double leftMillimetres, double bevelMillimetres, String number) {
    /** What is said of the strip of a picture's film. */
    public static final String WORDS = "wedge: upper row 21 greys of the art, L* 100 to 0 by 5, through the curve;"
            + " lower row film coverage without the curve, steps of 10 %";

    /** The same of the strip on a film that knows of no plate: {@code compose.TestPlateSheet} {@code evenLightness}. */
    public static final String WORDS_WITHOUT_CURVE =
            "wedge: upper row film coverage 0 to 100 % by 5, lower row 0 to 100 % by 10; no curve";

    private static final String NUMBERED =
            "fields 1 to 21 greys of the art, L* 100 to 0 by 5, through the curve; 22 to 32 film coverage, 0 to 100 % by 10,"
                    + " without it";

    /** Distance of the strip's top from the plate's bottom edge. */
    static final double TOP_MILLIMETRES = 18;

    private static final int GREYS = 21;
    private static final int COVERAGES = 11;
    private static final int FIELDS = GREYS + COVERAGES;
    private static final double STEP_MILLIMETRES = 6;
    private static final double FIELD_MILLIMETRES = 5.5;
    private static final double ROW_MILLIMETRES = 7;
    private static final double TICK_MILLIMETRES = 0.6;
    private static final double NUMBER_MILLIMETRES = 0.9;
    private static final double OFFCUT_NUMBER_MILLIMETRES = 2.4;
    /** From an offcut's platemark to its fields, and from a plate's bevel. */
    private static final double CLEAR_MILLIMETRES = 1;

    /** Rows beside the plate, not numbered. */
    public static WedgeStrip beside(String words) {
        return new WedgeStrip(Strip.BESIDE, words, GREYS, 0, 0, "");
    }

    /** No fields at all. */
    public static WedgeStrip none() {
        return new WedgeStrip(Strip.NONE, "", GREYS, 0, 0, "");
    }

    /** The strip that a job asks for. An offcut's number comes of title, date and art, so that it can be told later which plate it was bitten with. */
    public static WedgeStrip of(Job job) {
        CRC32 sum = new CRC32();
        sum.update((job.title() + "|" + job.date() + "|" + job.art().sha256()).getBytes(StandardCharsets.UTF_8));
        String number = Long.toString(1000 + sum.getValue() % 9000);
        double bevel = job.placing().bevelMillimetres();
        return switch (job.placing().strip()) {
            case BESIDE -> beside(WORDS);
            case NONE -> none();
            case OFFCUT ->
                new WedgeStrip(
                        Strip.OFFCUT,
                        "lay an offcut of copper no. " + number + " in the frame below the plate; " + NUMBERED,
                        GREYS,
                        0,
                        0,
                        number);
            case MARGIN -> {
                double room = job.plate().widthMillimetres() - 2 * (bevel + CLEAR_MILLIMETRES);
                int perRow = balanced(room);
                double left = (job.plate().widthMillimetres() - perRow * STEP_MILLIMETRES) / 2;
                yield new WedgeStrip(Strip.MARGIN, "wedge in the plate's margin: " + NUMBERED, perRow, left, bevel, "");
            }
        };
    }

    /** As many fields to a row as make equal rows of those that find room. */
    private static int balanced(double roomMillimetres) {
        int most = Math.max(1, (int) (roomMillimetres / STEP_MILLIMETRES));
        int rows = (FIELDS + most - 1) / most;
        return (FIELDS + rows - 1) / rows;
    }

    /** The same in rows of no more than a width, from elsewhere on. */
    WedgeStrip wrapped(double left, double roomMillimetres) {
        if (!isOutside()) {
            return this;
        }
        String wrapped = place == Strip.OFFCUT ? words : "wedge: " + NUMBERED;
        int fields = balanced(Math.min(roomMillimetres, (GREYS - 1) * STEP_MILLIMETRES));
        return new WedgeStrip(place, wrapped, fields, left, bevelMillimetres, number);
    }

    private boolean isOutside() {
        return place == Strip.BESIDE || place == Strip.OFFCUT;
    }

    private boolean inTwoRows() {
        return isOutside() && perRow >= GREYS;
    }

    private boolean isNumbered() {
        return place != Strip.BESIDE || !inTwoRows();
    }

    private int rows() {
        return inTwoRows() ? 2 : (FIELDS + perRow - 1) / perRow;
    }

    /** Of the rows beside the plate; 0 where there are none. */
    double widthMillimetres() {
        return isOutside() ? perRow * STEP_MILLIMETRES : 0;
    }

    /** Whether the sheet's usual margin is kept right of the rows, too. */
    boolean isWrapped() {
        return isOutside() && !inTwoRows();
    }

    /** Distance of the legends from the plate's bottom edge. */
    double bottomMillimetres() {
        double platemark = place == Strip.OFFCUT ? CLEAR_MILLIMETRES : 0;
        double numeral = place == Strip.OFFCUT && isWrapped() ? OFFCUT_NUMBER_MILLIMETRES + TICK_MILLIMETRES : 0;
        return isOutside() ? TOP_MILLIMETRES + rows() * ROW_MILLIMETRES + numeral + platemark : TOP_MILLIMETRES;
    }

    /** Distance of the first row from the plate's bottom edge, negative on the plate. */
    private double topMillimetres() {
        return isOutside() ? TOP_MILLIMETRES : -(bevelMillimetres + CLEAR_MILLIMETRES + rows() * ROW_MILLIMETRES);
    }

    List<Patch> patches(FilmPixels pixels, PixelRect plate) {
        List<Patch> patches = new ArrayList<>();
        if (place == Strip.NONE) {
            return patches;
        }
        for (int step = 0; step < GREYS; step++) {
            double lightness = 100.0 * (GREYS - 1 - step) / (GREYS - 1);
            int code = (int) Math.round(ToneCurve.SOLID * luminance(lightness));
            patches.add(new Patch(field(pixels, plate, step), new Patch.ArtGrey(code)));
        }
        for (int step = 0; step < COVERAGES; step++) {
            int coverage = (int) Math.round((double) ToneCurve.SOLID * step / (COVERAGES - 1));
            patches.add(new Patch(field(pixels, plate, GREYS + step), new Patch.FilmCoverage(coverage)));
        }
        return patches;
    }

    /** Under the middle of every field a short tick, so that clear fields can be found, or its number; round an offcut its platemark. */
    List<Mark> marks(FilmPixels pixels, PixelRect plate) {
        int line = Math.max(1, pixels.resolution().pixels(25.4 / 288));
        int gap = pixels.down(0.2);
        List<Mark> marks = new ArrayList<>();
        List<Patch> patches = patches(pixels, plate);
        for (int i = 0; i < patches.size(); i++) {
            PixelRect box = patches.get(i).box();
            if (isNumbered()) {
                String digits = Integer.toString(i + 1);
                int left = box.left() + (box.width() - pixels.across(NUMBER_MILLIMETRES * digits.length() / 2)) / 2;
                marks.addAll(PlateMarks.number(pixels, left, box.bottom() + gap, NUMBER_MILLIMETRES, digits));
            } else {
                marks.add(new Bar(new PixelRect(
                        box.left() + (box.width() - line) / 2,
                        box.bottom() + gap,
                        line,
                        Math.max(1, pixels.down(TICK_MILLIMETRES)))));
            }
        }
        if (place == Strip.OFFCUT) {
            marks.addAll(ofOffcut(pixels, plate));
            marks.addAll(PlateMarks.frame(pixels, offcut(pixels, plate)));
        }
        return marks;
    }

    /** Its number: beside the short row of two, else in a row of its own. */
    private List<Mark> ofOffcut(FilmPixels pixels, PixelRect plate) {
        PixelRect first = field(pixels, plate, 0);
        PixelRect last = field(pixels, plate, FIELDS - 1);
        return isWrapped()
                ? PlateMarks.number(
                        pixels,
                        first.left(),
                        last.top() + pixels.down(ROW_MILLIMETRES),
                        OFFCUT_NUMBER_MILLIMETRES,
                        number)
                : PlateMarks.number(
                        pixels, last.right() + pixels.across(CLEAR_MILLIMETRES), last.top(), FIELD_MILLIMETRES, number);
    }

    private PixelRect offcut(FilmPixels pixels, PixelRect plate) {
        int left = plate.left() + pixels.across(leftMillimetres - CLEAR_MILLIMETRES);
        int top = plate.bottom() + pixels.down(TOP_MILLIMETRES - CLEAR_MILLIMETRES / 2);
        int right = plate.left() + pixels.across(leftMillimetres + widthMillimetres() + CLEAR_MILLIMETRES / 2);
        int bottom = plate.bottom() + pixels.down(bottomMillimetres() - CLEAR_MILLIMETRES);
        return new PixelRect(left, top, right - left, bottom - top);
    }

    /** Refuses a picture that leaves the plate's margin too little room for the fields. */
    public void clearOf(SheetLayout layout, PixelRect image) {
        Optional<PixelRect> fields = layout.patches().stream().map(Patch::box).reduce(PixelRect::around);
        if (place != Strip.MARGIN || fields.isEmpty() || !fields.get().meets(image)) {
            return;
        }
        FilmPixels pixels = layout.pixels();
        throw Refusal.use("the picture leaves "
                + Refusal.plain(Math.max(
                        0, Math.rint(10 * pixels.downMillimetres(layout.plate().bottom() - image.bottom())) / 10))
                + " mm of plate below it; the wedge needs " + Refusal.plain(-topMillimetres())
                + " mm there: show the picture whole on a taller plate, or use --strip offcut or --strip none");
    }

    private PixelRect field(FilmPixels pixels, PixelRect plate, int step) {
        int row = inTwoRows() ? step / GREYS : step / perRow;
        int column = inTwoRows() ? step % GREYS : step % perRow;
        return new PixelRect(
                plate.left() + pixels.across(leftMillimetres + column * STEP_MILLIMETRES),
                plate.bottom() + pixels.down(topMillimetres() + row * ROW_MILLIMETRES),
                pixels.across(FIELD_MILLIMETRES),
                pixels.down(FIELD_MILLIMETRES));
    }

    /** CIE 15:2004, 8.2.1.1, inverted; above L* 8 a cube, below it the straight part with slope 27/24389. */
    private static double luminance(double lightness) {
        double root = (lightness + 16) / 116;
        return lightness > 8 ? root * root * root : lightness * 27 / 24_389;
    }
}
