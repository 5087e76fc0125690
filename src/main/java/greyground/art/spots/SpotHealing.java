package greyground.art.spots;

import greyground.art.touch.Touch;
import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Spots of a plane filled from what lies around them, on L*: smooth first ({@link SmoothFill}), held to the rim's own tones, then with the
 * grain of a place beside it. A spot is healed two pixels wider than it is seen; one whose surroundings hold an earlier spot sees that one healed, so their order matters
 * where they are that near. Nothing else of the plane changes.
 */
public final class SpotHealing {
    /** Pixels healed beyond what is seen, for soft edges (assumed). */
    private static final double BEYOND = 2;

    /** Places wider than this are filled by the harmonic fill: the other overshoots where the rim is uneven (assumed). */
    private static final double WIDEST_BIHARMONIC = 12;

    /** L* that a fill may pass the rim's lightest and darkest by (assumed). */
    private static final double OVERSHOOT = 2;

    /** Pixels of a line that are healed at once (assumed: much longer than any is wide). */
    private static final double LONGEST_PIECE = 256;

    private final GreyPlane plane;
    private final List<Patch> patches;

    /** Pixels of a rectangle that were healed. */
    @SuppressWarnings("ArrayRecordComponent") // never compared, never seen outside
    private record Patch(int left, int top, int width, boolean[] hole, short[] codes) {
        int bottom() {
            return top + hole.length / width;
        }

        /** Puts its pixels over a run of a row. */
        void over(int x, int y, int count, short[] into, int at) {
            if (y < top || y >= bottom()) {
                return;
            }
            for (int column = Math.max(x, left); column < Math.min(x + count, left + width); column++) {
                int from = (y - top) * width + column - left;
                if (hole[from]) {
                    into[at + column - x] = codes[from];
                }
            }
        }
    }

    private SpotHealing(GreyPlane plane, List<Patch> patches) {
        this.plane = plane;
        this.patches = patches;
    }

    /** Heals the accepted spots of a plane, in their order. */
    public static SpotHealing of(GreyPlane plane, List<Spot> spots) {
        List<Patch> patches = new ArrayList<>();
        SpotHealing healing = new SpotHealing(plane, patches);
        for (Spot spot : spots) {
            if (spot.accepted()) {
                pieces(spot).forEach(piece -> healing.heal(spot, piece, patches));
            }
        }
        return healing;
    }

    /** The healed plane's rows from the top, as {@link Bands} hands them on. */
    public void rows(int threads, Bands.Taker<short[]> taker, Progress progress) throws IOException {
        rows(Touch.ROWS, threads, taker, progress);
    }

    /** The same by bands of another height. */
    void rows(int bandRows, int threads, Bands.Taker<short[]> taker, Progress progress) throws IOException {
        int width = plane.width();
        Bands.<short[]>inOrder(
                plane.height(),
                bandRows,
                threads,
                () -> (first, count) -> {
                    short[] rows = new short[Math.multiplyExact(count, width)];
                    read(0, first, width, count, rows);
                    return rows;
                },
                taker,
                progress);
    }

    /** A rectangle of the plane with what is healed by now. */
    private void read(int left, int top, int width, int height, short[] into) {
        for (int row = 0; row < height; row++) {
            plane.readRun(left, top + row, width, into, row * width);
        }
        for (Patch patch : patches) {
            if (patch.left() < left + width && patch.left() + patch.width() > left) {
                for (int row = Math.max(0, patch.top() - top); row < Math.min(height, patch.bottom() - top); row++) {
                    patch.over(left, top + row, width, into, row * width);
                }
            }
        }
    }

    /** A spot in pieces short enough for a window around each. */
    private static List<Spot> pieces(Spot spot) {
        List<Spot> pieces = new ArrayList<>();
        for (int k = 1; k < spot.points().size(); k++) {
            Spot.Place from = spot.points().get(k - 1);
            Spot.Place to = spot.points().get(k);
            double across = to.across() - from.across();
            double down = to.down() - from.down();
            int parts = (int) Math.max(1, Math.ceil(Math.sqrt(across * across + down * down) / LONGEST_PIECE));
            for (int part = 0; part < parts; part++) {
                double begin = (double) part / parts;
                double end = (part + 1.0) / parts;
                pieces.add(spot.along(List.of(
                        new Spot.Place(from.across() + begin * across, from.down() + begin * down),
                        new Spot.Place(from.across() + end * across, from.down() + end * down))));
            }
        }
        return pieces.isEmpty() ? List.of(spot) : pieces;
    }

    /** Heals one piece of a spot, seeing the whole of it as a hole. */
    private void heal(Spot whole, Spot spot, List<Patch> into) {
        double reach = spot.widthPixels() / 2 + BEYOND;
        // Grain comes from 1.5 widths away, and is seen through a Gaussian.
        int around = (int) Math.ceil(3 * reach) + SpotGrain.REACH + 1;
        int left = (int) Math.max(0, Math.floor(least(spot, true) - reach) - around);
        int top = (int) Math.max(0, Math.floor(least(spot, false) - reach) - around);
        int right = (int) Math.min(plane.width(), Math.ceil(most(spot, true) + reach) + around);
        int bottom = (int) Math.min(plane.height(), Math.ceil(most(spot, false) + reach) + around);
        if (right <= left || bottom <= top) {
            return;
        }
        int width = right - left;
        int height = bottom - top;
        boolean[] hole = new boolean[Math.multiplyExact(width, height)];
        int holes = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                hole[y * width + x] = whole.distance(left + x + 0.5, top + y + 0.5) <= reach;
                holes += hole[y * width + x] ? 1 : 0;
            }
        }
        if (holes == 0 || holes == hole.length) {
            return;
        }
        short[] codes = new short[hole.length];
        read(left, top, width, height, codes);
        double[] field = new double[hole.length];
        for (int i = 0; i < field.length; i++) {
            field[i] = SpotSearch.lightness(codes[i]);
        }
        filled(field, width, height, hole, spot.widthPixels() <= WIDEST_BIHARMONIC);
        new SpotGrain(field, width, height, hole).into(field, reach);
        for (int i = 0; i < field.length; i++) {
            if (hole[i]) {
                double luminance = Lightness.toLuminance(Math.max(0, Math.min(100, field[i])));
                codes[i] = (short) Math.rint(luminance * GreyPlane.WHITE);
            }
        }
        for (int i = 0; i < hole.length; i++) {
            hole[i] &= spot.distance(left + i % width + 0.5, top + i / width + 0.5) <= reach;
        }
        into.add(new Patch(left, top, width, hole, codes));
    }

    private static double least(Spot spot, boolean across) {
        return spot.points().stream()
                .mapToDouble(point -> across ? point.across() : point.down())
                .min()
                .orElseThrow();
    }

    private static double most(Spot spot, boolean across) {
        return spot.points().stream()
                .mapToDouble(point -> across ? point.across() : point.down())
                .max()
                .orElseThrow();
    }

    /** Fills the hole smoothly, within what its rim of two pixels has. */
    private static void filled(double[] field, int width, int height, boolean[] hole, boolean twice) {
        boolean[] rim = rim(hole, width, height, 2);
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        double sum = 0;
        int count = 0;
        for (int i = 0; i < hole.length; i++) {
            if (rim[i]) {
                least = Math.min(least, field[i]);
                most = Math.max(most, field[i]);
                sum += field[i];
                count++;
            }
        }
        for (int i = 0; i < hole.length; i++) {
            field[i] = hole[i] ? sum / count : field[i];
        }
        solved(field, width, height, hole, twice);
        for (int i = 0; i < hole.length; i++) {
            if (hole[i]) {
                field[i] = Math.max(least - OVERSHOOT, Math.min(most + OVERSHOOT, field[i]));
            }
        }
    }

    /** Solves within the pixels that the equation sees alone. */
    private static void solved(double[] field, int width, int height, boolean[] hole, boolean twice) {
        int left = width;
        int right = 0;
        int top = height;
        int bottom = 0;
        for (int i = 0; i < hole.length; i++) {
            if (hole[i]) {
                left = Math.min(left, i % width);
                right = Math.max(right, i % width + 1);
                top = Math.min(top, i / width);
                bottom = Math.max(bottom, i / width + 1);
            }
        }
        left = Math.max(0, left - 2);
        top = Math.max(0, top - 2);
        int across = Math.min(width, right + 2) - left;
        int down = Math.min(height, bottom + 2) - top;
        double[] seen = new double[across * down];
        boolean[] seenHole = new boolean[across * down];
        for (int y = 0; y < down; y++) {
            System.arraycopy(field, (top + y) * width + left, seen, y * across, across);
            System.arraycopy(hole, (top + y) * width + left, seenHole, y * across, across);
        }
        new SmoothFill(across, down, seenHole, twice).fill(seen);
        for (int y = 0; y < down; y++) {
            System.arraycopy(seen, y * across, field, (top + y) * width + left, across);
        }
    }

    /** Pixels at most so many steps outside a hole, corners counted as one. */
    static boolean[] rim(boolean[] hole, int width, int height, int steps) {
        boolean[] grown = Arrays.copyOf(hole, hole.length);
        for (int step = 0; step < steps; step++) {
            boolean[] before = Arrays.copyOf(grown, grown.length);
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    grown[y * width + x] |= touches(before, width, height, x, y);
                }
            }
        }
        for (int i = 0; i < hole.length; i++) {
            grown[i] &= !hole[i];
        }
        return grown;
    }

    private static boolean touches(boolean[] set, int width, int height, int x, int y) {
        for (int row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++) {
            for (int column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
                if (set[row * width + column]) {
                    return true;
                }
            }
        }
        return false;
    }
}
