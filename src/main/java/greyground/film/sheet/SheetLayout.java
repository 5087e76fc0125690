package greyground.film.sheet;

import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;

/**
 * Where everything but the art lies on a film sheet; all edges are whole film pixels.
 *
 * <p>From the plate's edge outwards: bleed (at most 6 mm), ticks, register marks off the corners (7 to 17 mm), rulers above
 * and left (18 to 22 mm), the wedge strip below (18 to 31 mm) and legends under it. The plate's top left corner lies 24 mm
 * from the sheet's edges when the sheet is automatic, so films of one plate size agree edge to edge as well.
 *
 * @param pixels of the film printer, in which every length is laid out
 * @param width of the sheet in film pixels
 * @param height of the sheet in film pixels
 * @param plate its outline
 * @param bleed the plate grown by its bleed
 * @param marks ticks, register marks, rulers and the F
 * @param patches the wedge strip
 * @param lines legends
 */
public record SheetLayout(
        FilmPixels pixels,
        int width,
        int height,
        PixelRect plate,
        PixelRect bleed,
        List<Mark> marks,
        List<Patch> patches,
        List<Line> lines) {
    private static final double SIDE_MILLIMETRES = 24;
    private static final double TOP_MILLIMETRES = 24;
    private static final double LINE_PITCH_MILLIMETRES = 3;
    /** Of capitals, usually and on a sheet too small for that (assumed: read without a loupe). */
    private static final double SIZE = 1.8;

    private static final double SMALL = 1.4;
    private static final double LINES_LEFT_MILLIMETRES = -17;
    private static final double FOOT_MILLIMETRES = 2;
    private static final int LEAST_LINES = 6;
    private static final String RULER_WORDS = "each ruler must measure 100 mm, to 0.2 mm; if not, print at 100 %";

    public SheetLayout {
        marks = List.copyOf(marks);
        patches = List.copyOf(patches);
        lines = List.copyOf(lines);
    }

    /**
     * A legend and the room kept for it.
     *
     * @param room on the sheet; the text starts at its left, capitals fill its upper three quarters
     * @param capHeightMillimetres of a capital
     * @param text one line
     */
    public record Line(PixelRect room, double capHeightMillimetres, String text) {}

    /**
     * Lays out a sheet.
     *
     * @param plate 30 mm or more each way
     * @param bleedMillimetres 0 to 6
     * @param bevelMillimetres 0 to 6
     * @param sheet the film's own size, or empty for plate and margins
     * @param texts legends, long ones are broken at words
     * @param textWidth of the face they will be set in
     */
    public static SheetLayout of(
            FilmPixels pixels,
            Size plate,
            double bleedMillimetres,
            double bevelMillimetres,
            Optional<Size> sheet,
            List<String> texts,
            TextWidth textWidth) {
        return of(
                pixels,
                plate,
                bleedMillimetres,
                bevelMillimetres,
                sheet,
                texts,
                WedgeStrip.beside(WedgeStrip.WORDS),
                Double.POSITIVE_INFINITY,
                textWidth);
    }

    /**
     * The same with another wedge strip, and legends that are broken sooner. On a sheet too narrow or too low for the strip's two rows, it is
     * wrapped into rows that fit, the words are set smaller, and the ruler above the plate moves to the left.
     *
     * @param strip the wedge
     * @param widestLineMillimetres of a legend, as a tile has room for
     */
    public static SheetLayout of(
            FilmPixels pixels,
            Size plate,
            double bleedMillimetres,
            double bevelMillimetres,
            Optional<Size> sheet,
            List<String> texts,
            WedgeStrip strip,
            double widestLineMillimetres,
            TextWidth textWidth) {
        check(plate, bleedMillimetres, bevelMillimetres);
        Content open = new Content(pixels, plate, strip, texts, SIZE, 0, widestLineMillimetres, textWidth);
        Size whole = sheet.orElse(open.needed());
        Content content = open.fits(whole)
                ? open
                : open.wrapped(whole).filter(tight -> tight.fits(whole)).orElse(open);
        if (!content.fits(whole)) {
            throw Refusal.use("the sheet is " + whole + "; a plate of " + plate + " with its marks needs "
                    + content.needed() + ": give a larger sheet, a smaller plate, or ask for tiles");
        }
        int width = pixels.across(whole.widthMillimetres());
        int height = pixels.down(whole.heightMillimetres());
        PixelRect outline = new PixelRect(
                pixels.across(SIDE_MILLIMETRES
                        + (whole.widthMillimetres() - content.needed().widthMillimetres()) / 2),
                pixels.down(TOP_MILLIMETRES
                        + (whole.heightMillimetres() - content.needed().heightMillimetres()) / 2),
                pixels.across(plate.widthMillimetres()),
                pixels.down(plate.heightMillimetres()));
        int grownAcross = pixels.across(bleedMillimetres);
        int grownDown = pixels.down(bleedMillimetres);
        PixelRect bleed = new PixelRect(
                outline.left() - grownAcross,
                outline.top() - grownDown,
                outline.width() + 2 * grownAcross,
                outline.height() + 2 * grownDown);
        WedgeStrip laid = content.strip();
        List<Mark> marks = new ArrayList<>(PlateMarks.ticks(pixels, outline, bleedMillimetres, bevelMillimetres));
        marks.addAll(PlateMarks.register(pixels, outline));
        marks.addAll(PlateMarks.rulers(pixels, outline, content.rulerMillimetres()));
        marks.addAll(PlateMarks.asymmetric(pixels, outline));
        marks.addAll(laid.marks(pixels, outline));
        return new SheetLayout(
                pixels, width, height, outline, bleed, marks, laid.patches(pixels, outline), content.lines(outline));
    }

    /** What lies round a plate, and how much room it takes. */
    private record Content(
            FilmPixels pixels,
            Size plate,
            WedgeStrip strip,
            List<String> texts,
            double capMillimetres,
            double spareMillimetres,
            double widestLineMillimetres,
            TextWidth textWidth) {
        double width() {
            double besides = strip.isWrapped() ? SIDE_MILLIMETRES + LINES_LEFT_MILLIMETRES : SIDE_MILLIMETRES;
            double marked = strip.widthMillimetres() == 0
                    ? 0
                    : SIDE_MILLIMETRES + strip.leftMillimetres() + strip.widthMillimetres() + besides;
            double ruled = PlateMarks.RULER_LENGTH_MILLIMETRES + 2 * FOOT_MILLIMETRES;
            return Math.max(2 * SIDE_MILLIMETRES + plate.widthMillimetres(), Math.max(marked, ruled));
        }

        /** How far from the plate's left the ruler above it begins. */
        double rulerMillimetres() {
            double right = width() - SIDE_MILLIMETRES - FOOT_MILLIMETRES;
            return Math.min(0, right - PlateMarks.RULER_LENGTH_MILLIMETRES);
        }

        List<String> broken() {
            // Type is set on the page, which the printer then scales.
            double besides = 2 * (SIDE_MILLIMETRES + LINES_LEFT_MILLIMETRES);
            double room = Math.min(width() + spareMillimetres - besides, widestLineMillimetres) / pixels.scaleX();
            return SheetLayout.broken(texts, strip.words(), room, text -> textWidth.millimetres(text, capMillimetres));
        }

        double pitchMillimetres() {
            return LINE_PITCH_MILLIMETRES * (capMillimetres / SIZE);
        }

        Size needed() {
            double foot = strip.bottomMillimetres()
                    + pitchMillimetres() * Math.max(LEAST_LINES, broken().size())
                    + FOOT_MILLIMETRES;
            double height = TOP_MILLIMETRES
                    + Math.max(
                            plate.heightMillimetres() + foot, PlateMarks.RULER_LENGTH_MILLIMETRES + FOOT_MILLIMETRES);
            return new Size(width(), height);
        }

        boolean fits(Size whole) {
            return whole.widthMillimetres() >= needed().widthMillimetres()
                    && whole.heightMillimetres() >= needed().heightMillimetres();
        }

        /** The same for a sheet that is too small for it; empty where the plate alone is too large. */
        Optional<Content> wrapped(Size whole) {
            Content bare = with(WedgeStrip.none(), 0);
            double spare = (whole.widthMillimetres() - bare.width()) / 2;
            if (spare < 0) {
                return Optional.empty();
            }
            // A millimetre right of the words, clear of the ruler that stands left of a low plate.
            double edges = 2 * (SIDE_MILLIMETRES + LINES_LEFT_MILLIMETRES) + 2;
            WedgeStrip rows = strip.wrapped(LINES_LEFT_MILLIMETRES + 1, bare.width() + spare - edges);
            double over = Math.max(0, (whole.widthMillimetres() - with(rows, 0).width()) / 2);
            return Optional.of(with(rows, over));
        }

        private Content with(WedgeStrip other, double spare) {
            return new Content(pixels, plate, other, texts, SMALL, spare, widestLineMillimetres, textWidth);
        }

        List<Line> lines(PixelRect outline) {
            List<Line> lines = new ArrayList<>();
            int room = pixels.down(capMillimetres * 4 / 3);
            for (String text : broken()) {
                lines.add(new Line(
                        new PixelRect(
                                outline.left() + pixels.across(LINES_LEFT_MILLIMETRES),
                                outline.bottom()
                                        + pixels.down(strip.bottomMillimetres() + lines.size() * pitchMillimetres()),
                                Math.max(1, pixels.resolution().pixels(textWidth.millimetres(text, capMillimetres))),
                                room),
                        capMillimetres,
                        text));
            }
            return lines;
        }
    }

    /** The layout seen from the sheet's other side. Legends keep their mirrored rooms and read right. */
    public SheetLayout mirrored() {
        return new SheetLayout(
                pixels,
                width,
                height,
                plate.mirrored(width),
                bleed.mirrored(width),
                marks.stream().map(mark -> mark.mirrored(width)).toList(),
                patches.stream().map(patch -> patch.mirrored(width)).toList(),
                lines.stream()
                        .map(line -> new Line(line.room().mirrored(width), line.capHeightMillimetres(), line.text()))
                        .toList());
    }

    /** The layout with more marks, fields and legends drawn on it. */
    public SheetLayout carrying(List<Mark> moreMarks, List<Patch> morePatches, List<Line> moreLines) {
        return new SheetLayout(
                pixels,
                width,
                height,
                plate,
                bleed,
                both(marks, moreMarks),
                both(patches, morePatches),
                both(lines, moreLines));
    }

    private static <T> List<T> both(List<T> some, List<T> more) {
        List<T> all = new ArrayList<>(some);
        all.addAll(more);
        return all;
    }

    /** How near to the sheet's edges anything is drawn, in printed millimetres. */
    public double clearMillimetres() {
        PixelRect drawn = Stream.of(
                        Stream.of(bleed),
                        marks.stream().map(Mark::box),
                        patches.stream().map(Patch::box),
                        lines.stream().map(Line::room))
                .flatMap(boxes -> boxes)
                .reduce(PixelRect::around)
                .orElseThrow();
        return Math.min(
                pixels.acrossMillimetres(Math.min(drawn.left(), width - drawn.right())),
                pixels.downMillimetres(Math.min(drawn.top(), height - drawn.bottom())));
    }

    /** The layout with nothing on it but the art. */
    public SheetLayout bare() {
        return new SheetLayout(pixels, width, height, plate, bleed, List.of(), List.of(), List.of());
    }

    /** The sheet as the file describes it, with the art at {@code image}. */
    public Sheet sheet(PixelRect image) {
        List<Legend> legends = lines.stream()
                .map(line -> new Legend(
                        pixels.resolution().millimetres(line.room().left()),
                        pixels.resolution().millimetres(line.room().top()) + line.capHeightMillimetres(),
                        line.capHeightMillimetres(),
                        0,
                        line.text()))
                .toList();
        List<PixelRect> undivided = new ArrayList<>();
        marks.forEach(mark -> undivided.add(mark.box()));
        lines.forEach(line -> undivided.add(line.room()));
        patches.stream().map(Patch::box).reduce(PixelRect::around).ifPresent(undivided::add);
        return new Sheet(pixels, width, height, plate, image, legends, undivided);
    }

    private static void check(Size plate, double bleedMillimetres, double bevelMillimetres) {
        Job.PLATE_SIDE.check("plate width", plate.widthMillimetres());
        Job.PLATE_SIDE.check("plate height", plate.heightMillimetres());
        Placing.BLEED.check("bleed", bleedMillimetres);
        Placing.BEVEL.check("bevel", bevelMillimetres);
    }

    private static List<String> broken(
            List<String> texts, String stripWords, double roomMillimetres, ToDoubleFunction<String> width) {
        List<String> all = new ArrayList<>(texts);
        all.add(stripWords);
        all.add(RULER_WORDS);
        List<String> lines = new ArrayList<>();
        for (String text : all) {
            String rest = text.strip().replaceAll("\\s+", " ");
            while (!rest.isEmpty()) {
                int end = fitting(rest, roomMillimetres, width);
                lines.add(rest.substring(0, end).strip());
                rest = rest.substring(end).strip();
            }
        }
        return lines;
    }

    /** Characters of the first line: as many as fit, up to a gap between words where there is one. */
    private static int fitting(String text, double roomMillimetres, ToDoubleFunction<String> width) {
        int end = text.length();
        while (end > 1 && width.applyAsDouble(text.substring(0, end)) > roomMillimetres) {
            int gap = text.lastIndexOf(' ', end - 1);
            end = gap > 0 ? gap : end - 1;
        }
        return end;
    }
}
