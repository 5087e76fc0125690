package greyground.art.spots;

import greyground.art.spots.SpotCrowd.Candidate;
import greyground.art.touch.Touch;
import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Lightness;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Looks a picture through for dust: round spots some 2 to 45 pixels across, lighter or darker than what lies around.
 *
 * <p>On L* and on planes of half, a quarter and an eighth the size, wherever a Gaussian less the mean around it peaks, a soft disc is fitted
 * ({@link SpotFit}); of those that score, {@link SpotCrowd} keeps what has no likeness near it. All numbers are chosen on photographs
 * with specks put in: docs/spots.md.
 *
 * <p>Works in squares of the plane, each a pure function of its pixels and those around it, in any order on all threads.
 */
public final class SpotSearch {
    private static final int OCTAVES = 4;

    /** Sides of a square, and what is seen around it: multiples of the coarsest pixel. */
    private static final int SIDE = 1024;

    private static final int AROUND = 80;

    private static final int BOX = 5;

    /** What a peak is at least, in L*: about half of a disc of one pixel's radius and 5 L*. */
    private static final float LEAST_PEAK = 2.5f;

    /** Candidates kept; a picture that has more is all texture. */
    static final int MOST_CANDIDATES = 500_000;

    private SpotSearch() {}

    /** What stands out in a plane, surest first. */
    public static SpotsFound in(GreyPlane plane, int threads, Progress progress) throws IOException {
        return in(plane, SIDE, threads, progress);
    }

    /** The same in squares of another side, a multiple of 8. */
    static SpotsFound in(GreyPlane plane, int side, int threads, Progress progress) throws IOException {
        int across = (plane.width() + side - 1) / side;
        int down = (plane.height() + side - 1) / side;
        List<Candidate> all = new ArrayList<>();
        boolean[] tooMany = {false};
        Bands.<List<Candidate>>inOrder(
                Math.multiplyExact(across, down),
                1,
                threads,
                () -> {
                    Square square = new Square(plane, side);
                    return (first, count) -> square.candidates(first % across * side, first / across * side);
                },
                (first, count, found) -> {
                    tooMany[0] |= all.size() + found.size() > MOST_CANDIDATES;
                    if (!tooMany[0]) {
                        all.addAll(found);
                    }
                },
                progress);
        return tooMany[0] ? SpotsFound.CROWDED : SpotCrowd.standing(all);
    }

    private static final class Tables {
        static final float[] LIGHTNESS = lightness();

        private static float[] lightness() {
            float[] table = new float[GreyPlane.WHITE + 1];
            for (int code = 0; code < table.length; code++) {
                table[code] = (float) Lightness.ofLuminance((double) code / GreyPlane.WHITE);
            }
            return table;
        }
    }

    /** L* of a code. */
    static float lightness(short code) {
        return Tables.LIGHTNESS[code & 0xFFFF];
    }

    /** One square at a time, with its buffers. */
    private static final class Square {
        private final GreyPlane plane;
        private final int side;
        private final short[] codes;
        private float[] lightness;
        private float[] halved;
        private final float[] smooth;
        private final float[] sums;

        Square(GreyPlane plane, int side) {
            this.plane = plane;
            this.side = side;
            int window = side + 2 * AROUND;
            this.codes = new short[window];
            this.lightness = new float[window * window];
            this.halved = new float[window * window];
            this.smooth = new float[window * window];
            this.sums = new float[window * window];
        }

        List<Candidate> candidates(int left, int top) {
            int window = side + 2 * AROUND;
            read(left - AROUND, top - AROUND, window);
            List<Candidate> found = new ArrayList<>();
            int size = window;
            for (int octave = 0; octave < OCTAVES; octave++) {
                if (octave > 0) {
                    halve(size);
                    size /= 2;
                }
                peaks(size);
                search(left, top, octave, size, found);
            }
            return found;
        }

        private void read(int left, int top, int window) {
            for (int y = 0; y < window; y++) {
                int row = Touch.folded(top + y, plane.height());
                int from = Math.max(0, left);
                int to = Math.min(plane.width(), left + window);
                plane.readRun(from, row, to - from, codes, 0);
                for (int x = 0; x < window; x++) {
                    int column = Touch.folded(left + x, plane.width());
                    lightness[y * window + x] = column >= from && column < to
                            ? SpotSearch.lightness(codes[column - from])
                            : one(column, row);
                }
            }
        }

        /** Past the edge of a narrow plane its mirror image may lie outside what was read. */
        private float one(int column, int row) {
            short[] single = new short[1];
            plane.readRun(column, row, 1, single, 0);
            return SpotSearch.lightness(single[0]);
        }

        private void halve(int size) {
            int half = size / 2;
            for (int y = 0; y < half; y++) {
                for (int x = 0; x < half; x++) {
                    int at = 2 * y * size + 2 * x;
                    halved[y * half + x] =
                            (lightness[at] + lightness[at + 1] + lightness[at + size] + lightness[at + size + 1]) / 4;
                }
            }
            float[] other = lightness;
            lightness = halved;
            halved = other;
        }

        /** A Gaussian of one pixel less the mean of eleven by eleven, wherever both see no edge of the window. */
        private void peaks(int size) {
            for (int y = 0; y < size; y++) {
                int row = y * size;
                for (int x = BOX; x < size - BOX; x++) {
                    int at = row + x;
                    // Summed anew for each pixel: a running sum would depend on where the square begins.
                    sums[at] = sum(lightness, at - BOX);
                    smooth[at] = lightness[at - 2]
                            + lightness[at + 2]
                            + 4 * (lightness[at - 1] + lightness[at + 1])
                            + 6 * lightness[at];
                }
            }
            for (int y = BOX; y < size - BOX; y++) {
                for (int x = BOX; x < size - BOX; x++) {
                    int at = y * size + x;
                    float box = 0;
                    for (int k = -BOX; k <= BOX; k++) {
                        box += sums[at + k * size];
                    }
                    float gauss = smooth[at - 2 * size]
                            + smooth[at + 2 * size]
                            + 4 * (smooth[at - size] + smooth[at + size])
                            + 6 * smooth[at];
                    halved[at] = gauss / 256 - box / 121;
                }
            }
        }

        private static float sum(float[] values, int from) {
            float sum = 0;
            for (int k = 0; k <= 2 * BOX; k++) {
                sum += values[from + k];
            }
            return sum;
        }

        private void search(int left, int top, int octave, int size, List<Candidate> found) {
            int scale = 1 << octave;
            int edge = AROUND / scale;
            int inner = side / scale;
            for (int y = edge; y < edge + inner && top + (y - edge) * scale < plane.height(); y++) {
                for (int x = edge; x < edge + inner && left + (x - edge) * scale < plane.width(); x++) {
                    if (isPeak(y * size + x, size)) {
                        fit(left, top, x, y, octave, size, found);
                    }
                }
            }
        }

        /** Whether nothing within two pixels is higher; of equals the first is. */
        private boolean isPeak(int at, int size) {
            float here = halved[at];
            float sign = here < 0 ? -1 : 1;
            if (here * sign < LEAST_PEAK) {
                return false;
            }
            for (int dy = -2; dy <= 2; dy++) {
                for (int dx = -2; dx <= 2; dx++) {
                    float other = sign * halved[at + dy * size + dx];
                    boolean before = dy < 0 || (dy == 0 && dx < 0);
                    if (before ? other >= sign * here : other > sign * here) {
                        return false;
                    }
                }
            }
            return true;
        }

        private void fit(int left, int top, int x, int y, int octave, int size, List<Candidate> found) {
            SpotFit.Found best = SpotFit.Found.NOTHING;
            int bestX = x;
            int bestY = y;
            for (int dy = -1; dy <= 1; dy++) {
                for (int dx = -1; dx <= 1; dx++) {
                    SpotFit.Found fitted = SpotFit.at(lightness, size, x + dx, y + dy);
                    if (fitted.score() > best.score()) {
                        best = fitted;
                        bestX = x + dx;
                        bestY = y + dy;
                    }
                }
            }
            if (best.score() >= SpotCrowd.LEAST_SCORE && Math.abs(best.amount()) >= SpotCrowd.LEAST_CONTRAST) {
                int scale = 1 << octave;
                int edge = AROUND / scale;
                double across = left + (bestX - edge + 0.5) * scale;
                double down = top + (bestY - edge + 0.5) * scale;
                if (across >= 0 && down >= 0 && across < plane.width() && down < plane.height()) {
                    found.add(new Candidate(across, down, best.radius() * scale, best.amount(), best.score()));
                }
            }
        }
    }
}
