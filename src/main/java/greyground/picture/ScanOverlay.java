package greyground.picture;

import greyground.chart.Area;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.fit.MeasuredPatch;
import greyground.picture.Drawing.Anchor;
import greyground.picture.Drawing.Point;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.scan.ChartReader;
import greyground.scan.PaperWhite;
import greyground.scan.Projective;
import greyground.scan.ScanReading;
import greyground.scan.ScanReading.TargetReading;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What was measured on a scan of a test plate, drawn over the scan: the plate's outline, its codes, the part of each field that was read
 * with its L*, fields left out crossed, and the paper that was taken for white as dots. Words about it stand below.
 */
public final class ScanOverlay {
    private static final int MOST_PIXELS = 1600;
    private static final int MARGIN = 30;
    private static final double LETTER = 18;
    private static final double PAPER_MICROMETRES = 9_000;
    private static final double LIGHTEST_BEHIND_WHITE = 55;

    private final ScanReading reading;
    private final Projective place;
    private final double left;
    private final double top;
    private final double perPixel;
    private final int across;
    private final int down;
    private final Lettering lettering = Lettering.load();

    private ScanOverlay(GreyPlane scan, ScanReading reading) {
        this.reading = reading;
        this.place = reading.place();
        double width = reading.plate().recipe().widthMicrometres();
        double height = reading.plate().recipe().heightMicrometres();
        double away = PAPER_MICROMETRES;
        double[] x = {-away, width + away, width + away, -away};
        double[] y = {-away, -away, height + away, height + away};
        double[] scanX = new double[4];
        double[] scanY = new double[4];
        for (int i = 0; i < 4; i++) {
            scanX[i] = place.x(x[i], y[i]);
            scanY[i] = place.y(x[i], y[i]);
        }
        this.left = Math.max(0, Math.floor(Arrays.stream(scanX).min().orElse(0)));
        this.top = Math.max(0, Math.floor(Arrays.stream(scanY).min().orElse(0)));
        double right =
                Math.min(scan.width(), Math.ceil(Arrays.stream(scanX).max().orElse(1)));
        double bottom =
                Math.min(scan.height(), Math.ceil(Arrays.stream(scanY).max().orElse(1)));
        this.perPixel = Math.max(right - left, bottom - top) / MOST_PIXELS;
        this.across = (int) Math.max(1, Math.floor((right - left) / perPixel));
        this.down = (int) Math.max(1, Math.floor((bottom - top) / perPixel));
    }

    /**
     * Draws it.
     *
     * @param scan that was read
     * @param reading of it
     */
    public static Picture of(GreyPlane scan, ScanReading reading) {
        return new ScanOverlay(scan, reading).drawn(scan);
    }

    private Picture drawn(GreyPlane scan) {
        List<String> lines = new ArrayList<>();
        for (String note : reading.notes()) {
            lines.addAll(lettering.lines(sentence(note), LETTER, Math.max(across, 700)));
        }
        double wordsAt = MARGIN + down + LETTER * 2.2;
        int width = 2 * MARGIN + Math.max(across, 700);
        int height = (int) Math.ceil(wordsAt + LETTER * 1.45 * (lines.size() + 1) + MARGIN);
        Picture mat = Picture.filled(width, height, 0, Palette.MAT);
        mat.lay(reduced(scan), MARGIN, MARGIN);
        Drawing drawing = new Drawing(width, height);
        outlines(drawing);
        fields(drawing);
        String first =
                "Chart " + reading.plate().id() + ": " + reading.patches().size() + " of "
                        + reading.plate().patches().size() + " fields measured, L* as numbered";
        drawing.heavyWords(MARGIN, wordsAt, LETTER * 1.1, Anchor.START, Palette.INK, first);
        for (int i = 0; i < lines.size(); i++) {
            drawing.words(MARGIN, wordsAt + (i + 1) * LETTER * 1.45, LETTER, Anchor.START, Palette.INK, lines.get(i));
        }
        return DrawnPixels.over(mat, drawing, 1, lettering);
    }

    private static String sentence(String note) {
        return note.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + note.substring(1) + ".";
    }

    /** The part of the scan about the plate: means of light, or the scan's own pixels where it is small. */
    private Picture reduced(GreyPlane scan) {
        byte[] samples = new byte[3 * across * down];
        short[] row = new short[scan.width()];
        double[] sums = new double[across];
        int[] from = new int[across + 1];
        int[] to = new int[across];
        for (int x = 0; x < across; x++) {
            from[x] = (int) Math.min(scan.width() - 1.0, left + Math.floor(x * perPixel));
            to[x] = (int) Math.max(from[x] + 1.0, Math.min(scan.width(), left + Math.floor((x + 1) * perPixel)));
        }
        for (int y = 0; y < down; y++) {
            int first = (int) Math.min(scan.height() - 1.0, top + Math.floor(y * perPixel));
            int last = (int) Math.max(first + 1.0, Math.min(scan.height(), top + Math.floor((y + 1) * perPixel)));
            Arrays.fill(sums, 0);
            for (int line = first; line < last; line++) {
                scan.readRow(line, row);
                for (int x = 0; x < across; x++) {
                    long sum = 0;
                    for (int i = from[x]; i < to[x]; i++) {
                        sum += row[i] & 0xFFFF;
                    }
                    sums[x] += (double) sum / (to[x] - from[x]);
                }
            }
            for (int x = 0; x < across; x++) {
                int colour = Palette.ofReflectance(sums[x] / (last - first) / GreyPlane.WHITE);
                Arrays.fill(samples, 3 * (y * across + x), 3 * (y * across + x) + 3, (byte) colour);
            }
        }
        return new Picture(across, down, 0, samples);
    }

    private Point at(double xMicrometres, double yMicrometres) {
        return new Point(
                MARGIN + (place.x(xMicrometres, yMicrometres) - left) / perPixel,
                MARGIN + (place.y(xMicrometres, yMicrometres) - top) / perPixel);
    }

    private List<Point> round(double fromX, double fromY, double toX, double toY) {
        return List.of(at(fromX, fromY), at(toX, fromY), at(toX, toY), at(fromX, toY), at(fromX, fromY));
    }

    private List<Point> round(Area area) {
        return round(area.left(), area.top(), area.right(), area.bottom());
    }

    private void outlines(Drawing drawing) {
        for (PaperWhite.Square square : reading.paper()) {
            double half = square.sideMicrometres() / 2;
            Point middle = at(square.leftMicrometres() + half, square.topMicrometres() + half);
            drawing.dot(middle.x(), middle.y(), 1.3, Palette.ACCENT);
        }
        drawing.path(round(reading.plate().recipe().plate()), 2, Palette.ACCENT, 0);
        for (CornerCode code : reading.plate().codes()) {
            drawing.path(round(code.area()), 3, Palette.ACCENT, 0);
        }
        for (TargetReading target : reading.targets()) {
            drawing.path(round(target.target().area()), 1, Palette.ACCENT, 0);
        }
    }

    private void fields(Drawing drawing) {
        Map<String, MeasuredPatch> measured = new HashMap<>();
        reading.patches().forEach(patch -> measured.put(key(patch.xMillimetres(), patch.yMillimetres()), patch));
        for (LevelPatch patch : reading.plate().patches()) {
            Area area = patch.area();
            double x = area.left() + area.width() / 2.0;
            double y = area.top() + area.height() / 2.0;
            MeasuredPatch read = measured.get(key(x / 1000, y / 1000));
            if (read == null) {
                drawing.path(round(area), 1.6, Palette.ACCENT, 5);
                for (boolean falling : new boolean[] {true, false}) {
                    Point from = at(area.left(), falling ? area.top() : area.bottom());
                    Point to = at(area.right(), falling ? area.bottom() : area.top());
                    drawing.line(from.x(), from.y(), to.x(), to.y(), 1.6, Palette.ACCENT);
                }
            } else {
                Area inner = ChartReader.inner(area);
                drawing.path(round(inner), 1.6, Palette.ACCENT, 0);
                numeral(drawing, at(x, y), inner, read.lightness());
            }
        }
    }

    private static String key(double xMillimetres, double yMillimetres) {
        return Math.round(xMillimetres * 100) + "," + Math.round(yMillimetres * 100);
    }

    /** The field's L* on a plaque of that very tone: it vanishes where the reading is right. */
    private void numeral(Drawing drawing, Point middle, Area inner, double lightness) {
        Point a = at(inner.left(), inner.top());
        Point b = at(inner.right(), inner.top());
        double side = Math.sqrt((a.x() - b.x()) * (a.x() - b.x()) + (a.y() - b.y()) * (a.y() - b.y()));
        double size = Math.max(9, Math.min(LETTER, side * 0.42));
        String figure = Refusal.plain(Math.rint(lightness));
        double wide = lettering.width(figure, size) + size * 0.5;
        double tall = size * 1.15;
        drawing.rectangle(middle.x() - wide / 2, middle.y() - tall / 2, wide, tall, Palette.ofLightness(lightness));
        drawing.words(
                middle.x(),
                middle.y() + size * 0.36,
                size,
                Anchor.MIDDLE,
                lightness > LIGHTEST_BEHIND_WHITE ? Palette.INK : Palette.PAGE,
                figure);
    }
}
