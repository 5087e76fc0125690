package greyground.film.compose;

import greyground.chart.Area;
import greyground.chart.CheckPlate;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.chart.TestPlate.Strip;
import greyground.film.job.ReadingSide;
import greyground.film.sheet.BarDigits;
import greyground.film.sheet.Mark;
import greyground.film.sheet.Mark.DiscField;
import greyground.film.sheet.Mark.LinePairs;
import greyground.film.sheet.Mark.StarMark;
import greyground.film.sheet.Patch;
import greyground.film.sheet.SheetLayout;
import greyground.film.sheet.TextWidth;
import greyground.film.sheet.WedgeStrip;
import greyground.grain.AquatintScreen;
import greyground.grain.ThresholdTile;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.PixelRect;
import greyground.tone.Lightness;
import greyground.tone.ToneCurve;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A test plate on a film sheet like any positive's. Levels and codes are fields of the job's own grain, or of its continuous tone, without
 * the curve; targets are solid marks; the rows of the wedge are numbered beside the plate.
 */
public final class TestPlateSheet {
    private static final double TICK_FROM_MILLIMETRES = 7;
    private static final double TICK_MILLIMETRES = 5;
    private static final double CAP_MILLIMETRES = 1.2;
    // Clear of the plate's ticks.
    private static final double LABEL_AWAY_MILLIMETRES = 6.8;
    private static final double TIME_AWAY_MILLIMETRES = 8;

    private final SheetLayout bare;
    private final TestPlate plate;
    private final Optional<ThresholdTile> grain;
    private final TextWidth textWidth;
    private final List<Mark> marks = new ArrayList<>();
    private final List<Patch> patches = new ArrayList<>();
    private final List<SheetLayout.Line> lines = new ArrayList<>();

    private TestPlateSheet(SheetLayout bare, TestPlate plate, Optional<ThresholdTile> grain, TextWidth textWidth) {
        this.bare = bare;
        this.plate = plate;
        this.grain = grain;
        this.textWidth = textWidth;
    }

    /**
     * The film of a test plate.
     *
     * @param pixels of the film printer
     * @param grain at its resolution; empty for continuous tone
     * @param bits of continuous tone, 8 or 16; of a grain 1
     * @param sheet the film's own size, or empty for plate and margins
     * @param mirrored as {@link ReadingSide#mirrored} says
     * @param words legends under the plate
     * @param stripWords beside each strip of an exposure test, as many as it has
     */
    public static FilmComposer film(
            TestPlate plate,
            FilmPixels pixels,
            Optional<ThresholdTile> grain,
            int bits,
            Optional<Size> sheet,
            boolean mirrored,
            List<String> words,
            List<String> stripWords,
            TextWidth textWidth) {
        SheetLayout bare = bare(plate, pixels, sheet, words, textWidth);
        SheetLayout drawn = new TestPlateSheet(bare, plate, grain, textWidth).drawn(stripWords);
        FilmContent.Screen clear = new FilmContent.Screen(drawn.plate(), 0);
        return grain.map(tile -> FilmComposer.screened(drawn, clear, evenLightness(), tile, mirrored))
                .orElseGet(() -> FilmComposer.continuous(drawn, clear, evenLightness(), bits, mirrored));
    }

    /**
     * The screen film that goes with the continuous film of a test plate.
     *
     * @param aquatint at the printer's resolution
     * @param words legends under the plate
     */
    public static FilmComposer screen(
            TestPlate plate,
            FilmPixels pixels,
            AquatintScreen aquatint,
            Optional<Size> sheet,
            boolean mirrored,
            List<String> words,
            TextWidth textWidth) {
        SheetLayout bare = bare(plate, pixels, sheet, words, textWidth);
        FilmContent.Screen dots = new FilmContent.Screen(bare.bleed(), aquatint.coverage());
        return FilmComposer.screened(bare, dots, evenLightness(), aquatint.tile(), mirrored);
    }

    private static SheetLayout bare(
            TestPlate plate, FilmPixels pixels, Optional<Size> sheet, List<String> words, TextWidth textWidth) {
        Area copper = plate.recipe().plate();
        return SheetLayout.of(
                pixels,
                new Size(copper.width() / 1000.0, copper.height() / 1000.0),
                0,
                plate.recipe().bevelMicrometres() / 1000.0,
                sheet,
                words,
                WedgeStrip.beside(WedgeStrip.WORDS_WITHOUT_CURVE),
                Double.POSITIVE_INFINITY,
                textWidth);
    }

    /** The curve of a film that knows of no plate: black in proportion to how far L* lies below white. */
    public static ToneCurve evenLightness() {
        char[] table = new char[ToneCurve.CODES];
        for (int grey = 0; grey < ToneCurve.CODES; grey++) {
            double lightness = Lightness.ofLuminance(grey / (double) ToneCurve.SOLID);
            table[grey] = (char) Math.round(ToneCurve.SOLID * Math.max(0, 1 - lightness / 100));
        }
        return new ToneCurve("none, coverage 100 % - L*", table);
    }

    /** Rows of the wedge as they are numbered beside the plate, each with its coverages from left to right. */
    public static List<String> rows(TestPlate plate) {
        return rows(plate, patch -> Refusal.plain(patch.coveragePerMille() / 10.0));
    }

    /** Rows of a check plate, each with the L* at which its fields should print. */
    public static List<String> rows(CheckPlate check) {
        return rows(
                check.plate(), patch -> String.format(Locale.ROOT, "%.1f", check.lightness(patch.coveragePerMille())));
    }

    private static List<String> rows(TestPlate plate, Function<LevelPatch, String> shown) {
        List<String> rows = new ArrayList<>();
        for (List<LevelPatch> row : fields(plate)) {
            rows.add((rows.size() + 1) + ": " + row.stream().map(shown).collect(Collectors.joining(" ")));
        }
        return rows;
    }

    /** Fields of the wedge row by row from the top, each from the left, as they are numbered beside the plate. */
    public static List<List<LevelPatch>> fields(TestPlate plate) {
        Map<Integer, List<LevelPatch>> rows = new TreeMap<>();
        plate.patches()
                .forEach(patch -> rows.computeIfAbsent(patch.area().top(), any -> new ArrayList<>())
                        .add(patch));
        rows.values()
                .forEach(row ->
                        row.sort(Comparator.comparingInt(patch -> patch.area().left())));
        return List.copyOf(rows.values());
    }

    private SheetLayout drawn(List<String> stripWords) {
        for (CornerCode code : plate.codes()) {
            code(code);
        }
        for (LevelPatch patch : plate.patches()) {
            PixelRect box = rect(patch.area());
            patches.add(new Patch(box, new Patch.FilmCoverage(evenCoverage(box, patch.coverage()))));
        }
        plate.targets().forEach(this::target);
        for (Strip strip : plate.strips()) {
            strip(strip, strip.number() <= stripWords.size() ? stripWords.get(strip.number() - 1) : "");
        }
        if (plate.strips().isEmpty()) {
            numbers();
        }
        return bare.carrying(marks, patches, lines);
    }

    private void code(CornerCode code) {
        Area area = code.area();
        int module = area.width() / CornerCode.MODULES;
        int coverage = (int) Math.round(plate.recipe().codePercent() / 100.0 * ToneCurve.SOLID);
        for (CornerCode.Run run : code.runs()) {
            Area dark = new Area(
                    area.left() + run.from() * module,
                    area.top() + run.row() * module,
                    (run.to() - run.from()) * module,
                    module);
            patches.add(new Patch(rect(dark), new Patch.FilmCoverage(coverage)));
        }
    }

    private void target(Target target) {
        PixelRect box = sized(target.area());
        if (target instanceof Target.Dots dots) {
            marks.add(discs(box, dots.diameter(), dots.pitch(), false));
        } else if (target instanceof Target.Holes holes) {
            marks.add(discs(box, holes.diameter(), holes.pitch(), true));
        } else if (target instanceof Target.Lines pairs) {
            double period = pairs.period()
                    / (pairs.upright()
                            ? bare.pixels().pitchAcrossMicrometres()
                            : bare.pixels().pitchDownMicrometres());
            marks.add(new LinePairs(box, Math.max(2, period), pairs.upright(), false));
        } else if (target instanceof Target.Dark dark) {
            PixelRect field = rect(dark.area());
            patches.add(
                    new Patch(field, new Patch.FilmCoverage(evenCoverage(field, dark.coveragePerMille() / 1000.0))));
        } else if (target instanceof Target.Star) {
            marks.add(new StarMark(box, Target.Star.WEDGES));
        } else if (target instanceof Target.Numeral numeral) {
            digits(numeral);
        } else {
            marks.add(new Mark.Bar(box));
        }
    }

    private DiscField discs(PixelRect box, int diameter, int pitch, boolean holes) {
        return DiscField.centred(
                box,
                new DiscField.Spacing(across(diameter), across(pitch)),
                new DiscField.Spacing(down(diameter), down(pitch)),
                holes);
    }

    /** Ticks off the plate where the card's edge goes, and the strip's time beside it. */
    private void strip(Strip strip, String words) {
        int line = Math.max(1, bare.pixels().resolution().pixels(0.15));
        int tick = bare.pixels().across(TICK_MILLIMETRES);
        int away = bare.pixels().across(TICK_FROM_MILLIMETRES);
        PixelRect whole = rect(strip.area());
        if (strip.number() < plate.strips().size()) {
            int y = whole.bottom() - line / 2;
            marks.add(new Mark.Bar(new PixelRect(bare.plate().left() - away - tick, y, tick, line)));
            marks.add(new Mark.Bar(new PixelRect(bare.plate().right() + away, y, tick, line)));
        }
        if (!words.isEmpty()) {
            int middle = whole.top() + whole.height() / 2 - bare.pixels().down(CAP_MILLIMETRES / 2);
            label(bare.plate().right() + bare.pixels().across(TIME_AWAY_MILLIMETRES), middle, words);
        }
    }

    /** Numbers the rows of the wedge at the left. */
    private void numbers() {
        int away = bare.pixels().across(LABEL_AWAY_MILLIMETRES);
        int cap = bare.pixels().down(CAP_MILLIMETRES);
        int number = 0;
        for (List<LevelPatch> row : fields(plate)) {
            number++;
            PixelRect box = rect(row.get(0).area());
            String words = Integer.toString(number);
            int width = bare.pixels().across(textWidth.millimetres(words, CAP_MILLIMETRES));
            label(bare.plate().left() - away - width, box.top() + (box.height() - cap) / 2, words);
        }
    }

    private void label(int left, int top, String words) {
        double width = textWidth.millimetres(words, CAP_MILLIMETRES);
        PixelRect room = new PixelRect(
                left,
                top,
                Math.max(1, bare.pixels().across(width)),
                bare.pixels().down(CAP_MILLIMETRES * 4 / 3));
        lines.add(new SheetLayout.Line(room, CAP_MILLIMETRES, words));
    }

    /** Neighbours that touch on the plate touch on the film: each edge goes to its nearest pixel. */
    private PixelRect rect(Area area) {
        int left = acrossTo(area.left());
        int top = downTo(area.top());
        return new PixelRect(
                bare.plate().left() + left,
                bare.plate().top() + top,
                Math.max(1, acrossTo(area.right()) - left),
                Math.max(1, downTo(area.bottom()) - top));
    }

    /** Its size is right to the nearest pixel, wherever it stands. */
    private PixelRect sized(Area area) {
        return new PixelRect(
                bare.plate().left() + acrossTo(area.left()),
                bare.plate().top() + downTo(area.top()),
                across(area.width()),
                down(area.height()));
    }

    private int acrossTo(int micrometres) {
        return bare.pixels().across(micrometres / 1000.0);
    }

    private int downTo(int micrometres) {
        return bare.pixels().down(micrometres / 1000.0);
    }

    private int across(int micrometres) {
        return Math.max(1, acrossTo(micrometres));
    }

    private int down(int micrometres) {
        return Math.max(1, downTo(micrometres));
    }

    /**
     * The coverage to ask of the film so that a field's black share comes nearest to what is wished: a field cuts through dots at its edges
     * and holds but a few hundred of them, so the plain share would miss by a percent or so.
     *
     * @param box on the sheet, not mirrored
     * @param share 0 to 1
     * @return in 1/65 535; 0 and 65 535 for a clear and a solid field
     */
    private int evenCoverage(PixelRect box, double share) {
        if (share <= 0 || share >= 1) {
            return share <= 0 ? 0 : ToneCurve.SOLID;
        }
        if (grain.isEmpty()) {
            return (int) Math.round(share * ToneCurve.SOLID);
        }
        ThresholdTile tile = grain.get();
        int[] count = new int[ToneCurve.SOLID];
        char[] row = new char[box.width()];
        for (int y = box.top(); y < box.bottom(); y++) {
            tile.copyRow(box.left(), y, box.width(), row);
            for (char threshold : row) {
                count[threshold]++;
            }
        }
        double wished = share * box.width() * box.height();
        long black = 0;
        for (int threshold = 0; threshold < count.length; threshold++) {
            long more = black + count[threshold];
            if (more >= wished) {
                return more - wished <= wished - black ? threshold + 1 : threshold;
            }
            black = more;
        }
        return ToneCurve.SOLID;
    }

    private void digits(Target.Numeral numeral) {
        int left = numeral.area().left();
        for (char digit : Integer.toString(numeral.number()).toCharArray()) {
            List<Area> strokes = strokes(left, numeral.area().top());
            for (int stroke = 0; stroke < strokes.size(); stroke++) {
                if (BarDigits.has(digit, stroke)) {
                    marks.add(new Mark.Bar(sized(strokes.get(stroke))));
                }
            }
            left += Target.Numeral.ADVANCE;
        }
    }

    private static List<Area> strokes(int left, int top) {
        int wide = Target.Numeral.DIGIT_WIDTH;
        int thick = Target.Numeral.STROKE;
        int half = (Target.Numeral.HEIGHT + thick) / 2;
        int right = left + wide - thick;
        int middle = top + half - thick;
        return List.of(
                new Area(left, top, wide, thick),
                new Area(left, top, thick, half),
                new Area(right, top, thick, half),
                new Area(left, middle, wide, thick),
                new Area(left, middle, thick, half),
                new Area(right, middle, thick, half),
                new Area(left, top + Target.Numeral.HEIGHT - thick, wide, thick));
    }
}
