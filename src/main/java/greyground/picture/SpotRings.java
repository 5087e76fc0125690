package greyground.picture;

import greyground.picture.Drawing.Anchor;
import greyground.picture.Drawing.Point;
import greyground.raster.GreyPlane;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A picture with places ringed and numbered, and under it each of the first of them enlarged, for somebody to choose from. */
public final class SpotRings {
    private static final int MOST_PIXELS = 2000;
    private static final int LEAST_ACROSS = 700;
    private static final int MARGIN = 30;
    private static final double LETTER = 16;

    /** Sides of an enlarged place, and what lies between two. */
    private static final int TILE = 120;

    private static final int GAP = 12;
    private static final int MOST_TILES = 240;

    /** Art's pixels that an enlarged place shows at least, and widths of a spot. */
    private static final int FEWEST_SHOWN = 30;

    private static final double WIDTHS_SHOWN = 4;

    private final GreyPlane plane;
    private final List<Ring> rings;
    private final double perPixel;
    private final int across;
    private final int down;
    private final int width;
    private final Lettering lettering = Lettering.load();

    /**
     * A place.
     *
     * @param number as its file has it
     * @param x of its middle, in pixels of the art
     * @param y of its middle
     * @param radius in pixels of the art
     * @param accepted whether it is to be healed; the others are ringed by dashes
     */
    public record Ring(int number, double x, double y, double radius, boolean accepted) {}

    private SpotRings(GreyPlane plane, List<Ring> rings) {
        this.plane = plane;
        this.rings = rings;
        this.perPixel = Math.max(1, Math.max(plane.width(), plane.height()) / (double) MOST_PIXELS);
        this.across = (int) Math.max(1, Math.floor(plane.width() / perPixel));
        this.down = (int) Math.max(1, Math.floor(plane.height() / perPixel));
        this.width = 2 * MARGIN + Math.max(across, LEAST_ACROSS);
    }

    /** Draws it, reduced to 2000 pixels where it is larger. */
    public static Picture of(GreyPlane plane, List<Ring> rings) {
        return new SpotRings(plane, List.copyOf(rings)).drawn();
    }

    private Picture drawn() {
        int tiles = Math.min(MOST_TILES, rings.size());
        int inRow = Math.max(1, (width - 2 * MARGIN + GAP) / (TILE + GAP));
        int rowHeight = TILE + GAP + (int) Math.ceil(1.5 * LETTER);
        double wordsAt = MARGIN + down + 2.2 * LETTER;
        int tilesAt = (int) Math.ceil(wordsAt + LETTER);
        int height = tilesAt + (tiles + inRow - 1) / inRow * rowHeight + MARGIN;
        Picture mat = Picture.filled(width, height, 0, Palette.MAT);
        mat.lay(part(0, 0, across, down, perPixel), MARGIN, MARGIN);
        Drawing drawing = new Drawing(width, height);
        for (Ring ring : rings) {
            ringed(drawing, ring);
        }
        drawing.words(MARGIN, wordsAt, LETTER, Anchor.START, Palette.INK, words(tiles));
        for (int i = 0; i < tiles; i++) {
            Ring ring = rings.get(i);
            double shown = Math.max(FEWEST_SHOWN, WIDTHS_SHOWN * 2 * ring.radius());
            int left = MARGIN + i % inRow * (TILE + GAP);
            int top = tilesAt + i / inRow * rowHeight;
            mat.lay(part(ring.x() - shown / 2, ring.y() - shown / 2, TILE, TILE, shown / TILE), left, top);
            drawing.words(
                    left,
                    top + TILE + 1.1 * LETTER,
                    LETTER,
                    Anchor.START,
                    ring.accepted() ? Palette.ACCENT : Palette.INK,
                    ring.number() + (ring.accepted() ? "" : " refused"));
        }
        return DrawnPixels.over(mat, drawing, 1, lettering);
    }

    private String words(int tiles) {
        long accepted = rings.stream().filter(Ring::accepted).count();
        return rings.size() + " spots, " + accepted + " accepted (whole rings), the others refused (dashes)"
                + (tiles < rings.size() ? "; enlarged below, the first " + tiles : "");
    }

    private void ringed(Drawing drawing, Ring ring) {
        double x = MARGIN + ring.x() / perPixel;
        double y = MARGIN + ring.y() / perPixel;
        double radius = Math.max(7, ring.radius() / perPixel + 4);
        List<Point> round = new ArrayList<>();
        for (int i = 0; i <= 36; i++) {
            double angle = i * StrictMath.PI / 18;
            round.add(new Point(x + radius * StrictMath.cos(angle), y + radius * StrictMath.sin(angle)));
        }
        drawing.path(round, 3, Palette.PAGE, 0);
        drawing.path(round, 1.5, Palette.ACCENT, ring.accepted() ? 0 : 3);
        String number = Integer.toString(ring.number());
        double size = 13;
        double wide = lettering.width(number, size) + 4;
        double left = x + radius + wide + 2 > width - MARGIN ? x - radius - wide - 1 : x + radius + 1;
        drawing.rectangle(left, y - size * 0.6, wide, size * 1.2, Palette.PAGE);
        drawing.words(left + 2, y + size * 0.36, size, Anchor.START, Palette.ACCENT, number);
    }

    /** A part of the art: means of light where it is reduced, the nearest pixel where it is enlarged; the mat's tone past its edge. */
    private Picture part(double left, double top, int wide, int tall, double pixels) {
        byte[] samples = new byte[3 * wide * tall];
        short[] row = new short[plane.width()];
        double[] sums = new double[wide];
        for (int y = 0; y < tall; y++) {
            int first = (int) Math.floor(top + y * pixels);
            int last = Math.max(first + 1, (int) Math.floor(top + (y + 1) * pixels));
            Arrays.fill(sums, 0);
            boolean within = first >= 0 && last <= plane.height();
            for (int line = first; line < last && within; line++) {
                plane.readRow(line, row);
                for (int x = 0; x < wide; x++) {
                    sums[x] += mean(row, left + x * pixels, pixels);
                }
            }
            for (int x = 0; x < wide; x++) {
                boolean seen = within && left + x * pixels >= 0 && left + (x + 1) * pixels <= plane.width();
                int colour = seen ? Palette.ofReflectance(sums[x] / (last - first) / GreyPlane.WHITE) : Palette.MAT;
                Arrays.fill(samples, 3 * (y * wide + x), 3 * (y * wide + x) + 3, (byte) colour);
            }
        }
        return new Picture(wide, tall, 0, samples);
    }

    private double mean(short[] row, double left, double pixels) {
        int from = (int) Math.max(0, Math.min(plane.width() - 1, Math.floor(left)));
        int to = (int) Math.max(from + 1, Math.min(plane.width(), Math.floor(left + pixels)));
        long sum = 0;
        for (int i = from; i < to; i++) {
            sum += row[i] & 0xFFFF;
        }
        return (double) sum / (to - from);
    }
}
