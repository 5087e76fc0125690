package greyground.grain;

import java.util.ArrayDeque;
import java.util.Arrays;

/**
 * Measures a square of film bits: noise spectrum, evenness in all directions, and what a resist would keep of it. The
 * square is taken to wrap round.
 */
public final class GrainQuality {
    private GrainQuality() {}

    /**
     * The power spectrum of the bits over that of white noise of the same coverage, in annuli one bin wide (Ulichney 1988,
     * from memory).
     *
     * @param mean over each annulus, by its radius in cycles per tile; 0 is the mean coverage itself and holds 0
     * @param anisotropy of each annulus, variance over squared mean: 1 for a random isotropic pattern
     * @param sectors mean power of six sectors of 30 degrees over the annuli that were asked for, over their mean
     */
    public record Spectrum(double[] mean, double[] anisotropy, double[] sectors) {
        /** The mean of the annuli with 0 &lt; f &lt; {@code below} cycles per tile. */
        public double lowBand(double below) {
            int last = Math.max(1, (int) Math.ceil(below) - 1);
            return Arrays.stream(mean, 1, last + 1).average().orElseThrow();
        }

        /** The mean anisotropy of annuli from {@code from} to {@code to} cycles per tile. */
        public double anisotropy(double from, double to) {
            return Arrays.stream(anisotropy, (int) from, (int) to + 1).average().orElseThrow();
        }
    }

    /** The bits of one tone: black where the threshold is below the coverage. */
    public static boolean[] bits(ThresholdTile tile, double coverage) {
        int code = (int) Math.round(coverage * 65_535);
        boolean[] bits = new boolean[tile.width() * tile.height()];
        for (int y = 0; y < tile.height(); y++) {
            for (int x = 0; x < tile.width(); x++) {
                bits[y * tile.width() + x] = code > tile.threshold(x, y);
            }
        }
        return bits;
    }

    /**
     * Measures the spectrum by the definition of the discrete Fourier transform, rows then columns, for as far as asked.
     *
     * @param reach largest radius in cycles per tile
     * @param from smallest radius that the sectors count
     */
    public static Spectrum spectrum(boolean[] bits, int side, int reach, double from) {
        double share = share(bits);
        double[] cosine = new double[side];
        double[] sine = new double[side];
        for (int i = 0; i < side; i++) {
            cosine[i] = Math.cos(2 * Math.PI * i / side);
            sine[i] = Math.sin(2 * Math.PI * i / side);
        }
        double[][] rowsReal = new double[reach + 1][side];
        double[][] rowsImaginary = new double[reach + 1][side];
        for (int u = 0; u <= reach; u++) {
            for (int y = 0; y < side; y++) {
                double real = 0;
                double imaginary = 0;
                int phase = 0;
                for (int x = 0; x < side; x++) {
                    if (bits[y * side + x]) {
                        real += cosine[phase];
                        imaginary -= sine[phase];
                    }
                    phase += u;
                    phase -= phase >= side ? side : 0;
                }
                rowsReal[u][y] = real;
                rowsImaginary[u][y] = imaginary;
            }
        }
        double[] count = new double[reach + 1];
        double[] sum = new double[reach + 1];
        double[] squares = new double[reach + 1];
        double[] sectors = new double[6];
        double[] sectorCount = new double[6];
        double white = share * (1 - share) * side * side;
        // The bits are real, so the half plane u >= 0 holds everything; its edge u = 0 is met twice and counts half.
        for (int u = 0; u <= reach; u++) {
            for (int v = -reach; v <= reach; v++) {
                int radius = (int) Math.rint(Math.hypot(u, v));
                if (radius > reach || radius == 0) {
                    continue;
                }
                double real = 0;
                double imaginary = 0;
                int step = Math.floorMod(v, side);
                int phase = 0;
                for (int y = 0; y < side; y++) {
                    real += rowsReal[u][y] * cosine[phase] + rowsImaginary[u][y] * sine[phase];
                    imaginary += rowsImaginary[u][y] * cosine[phase] - rowsReal[u][y] * sine[phase];
                    phase += step;
                    phase -= phase >= side ? side : 0;
                }
                double weight = u == 0 ? 0.5 : 1;
                double power = (real * real + imaginary * imaginary) / white;
                count[radius] += weight;
                sum[radius] += weight * power;
                squares[radius] += weight * power * power;
                if (radius >= from) {
                    int sector = (int) Math.floorMod((long) Math.floor(Math.toDegrees(Math.atan2(v, u)) / 30), 6L);
                    sectors[sector] += weight * power;
                    sectorCount[sector] += weight;
                }
            }
        }
        double[] mean = new double[reach + 1];
        double[] anisotropy = new double[reach + 1];
        for (int r = 1; r <= reach; r++) {
            mean[r] = sum[r] / count[r];
            anisotropy[r] = (squares[r] / count[r] - mean[r] * mean[r]) / (mean[r] * mean[r]);
        }
        double all = 0;
        for (int s = 0; s < 6; s++) {
            sectors[s] /= sectorCount[s];
            all += sectors[s] / 6;
        }
        for (int s = 0; s < 6; s++) {
            sectors[s] /= all;
        }
        return new Spectrum(mean, anisotropy, sectors);
    }

    /** The share of black. */
    public static double share(boolean[] bits) {
        long black = 0;
        for (boolean bit : bits) {
            black += bit ? 1 : 0;
        }
        return (double) black / bits.length;
    }

    /** The complement: lands for dots. */
    public static boolean[] inverse(boolean[] bits) {
        boolean[] inverse = new boolean[bits.length];
        for (int i = 0; i < bits.length; i++) {
            inverse[i] = !bits[i];
        }
        return inverse;
    }

    /** Sizes in pixels of the clusters of set bits that touch by sides or corners, the tile wrapping round. */
    public static int[] clusters(boolean[] bits, int side) {
        boolean[] seen = new boolean[bits.length];
        int[] sizes = new int[bits.length];
        int found = 0;
        ArrayDeque<Integer> open = new ArrayDeque<>();
        for (int start = 0; start < bits.length; start++) {
            if (!bits[start] || seen[start]) {
                continue;
            }
            seen[start] = true;
            open.add(start);
            while (!open.isEmpty()) {
                int at = open.remove();
                sizes[found]++;
                for (int n = 0; n < 9; n++) {
                    int next = Math.floorMod(at / side + n / 3 - 1, side) * side
                            + Math.floorMod(at % side + n % 3 - 1, side);
                    if (bits[next] && !seen[next]) {
                        seen[next] = true;
                        open.add(next);
                    }
                }
            }
            found++;
        }
        return Arrays.copyOf(sizes, found);
    }

    /**
     * The share of the set bits' area that lies in features at least {@code width} wide: on a grid {@code finer} times as
     * fine, what an opening by a disc of that diameter keeps, grown back by one film pixel within the set.
     *
     * @param width in film pixels
     * @param window side in pixels of the square that is measured, at the tile's corner
     */
    public static double survival(boolean[] bits, int side, double width, int finer, int window) {
        int margin = (int) Math.ceil(width) + 2;
        int across = (window + 2 * margin) * finer;
        boolean[] fine = new boolean[across * across];
        for (int y = 0; y < across; y++) {
            int row = Math.floorMod(y / finer - margin, side) * side;
            for (int x = 0; x < across; x++) {
                fine[y * across + x] = bits[row + Math.floorMod(x / finer - margin, side)];
            }
        }
        double radius = width * finer / 2;
        boolean[] opened = dilated(eroded(fine, across, radius), across, radius);
        boolean[] grown = dilated(opened, across, finer);
        long kept = 0;
        long all = 0;
        for (int y = margin * finer; y < across - margin * finer; y++) {
            for (int x = margin * finer; x < across - margin * finer; x++) {
                boolean set = fine[y * across + x];
                all += set ? 1 : 0;
                kept += set && grown[y * across + x] ? 1 : 0;
            }
        }
        return (double) kept / all;
    }

    /** Set where the whole disc about a pixel is set; outside the picture counts as set. */
    static boolean[] eroded(boolean[] set, int across, double radius) {
        int down = set.length / across;
        int[] filled = new int[across + 1];
        int[][] sums = new int[down][];
        for (int y = 0; y < down; y++) {
            for (int x = 0; x < across; x++) {
                filled[x + 1] = filled[x] + (set[y * across + x] ? 1 : 0);
            }
            sums[y] = filled.clone();
        }
        int reach = (int) radius;
        int[] half = new int[reach + 1];
        for (int d = 0; d <= reach; d++) {
            half[d] = (int) Math.sqrt(radius * radius - d * d);
        }
        boolean[] kept = new boolean[set.length];
        for (int y = 0; y < down; y++) {
            for (int x = 0; x < across; x++) {
                boolean whole = true;
                for (int d = -reach; d <= reach && whole; d++) {
                    if (y + d >= 0 && y + d < down) {
                        int from = Math.max(0, x - half[Math.abs(d)]);
                        int to = Math.min(across, x + half[Math.abs(d)] + 1);
                        whole = sums[y + d][to] - sums[y + d][from] == to - from;
                    }
                }
                kept[y * across + x] = whole;
            }
        }
        return kept;
    }

    /** Set where the disc about a pixel meets the set. */
    static boolean[] dilated(boolean[] set, int across, double radius) {
        return inverse(eroded(inverse(set), across, radius));
    }
}
