package greyground.plate.inspect;

import java.util.ArrayList;
import java.util.List;

/** An inspection straight from its definitions, a pixel and a disc at a time, on half-pixel centres. */
final class NaiveInspection {
    private final int width;
    private final int height;
    private final int margin = 60;
    private final boolean[][] black;
    private final boolean[][] open;
    private final boolean[][] land;
    private final double padRadius;
    private final FilmLimits limits;
    private final double pitch;

    NaiveInspection(FilmInspectionTest.Bits bits, FilmLimits limits, double pitch) {
        this.limits = limits;
        this.pitch = pitch;
        width = bits.width() + 2 * margin;
        height = bits.height() + 2 * margin;
        black = new boolean[height][width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                black[y][x] = bits.get(x - margin, y - margin);
            }
        }
        open = opened(black, limits.leastOpeningMicrometres() / pitch);
        land = opened(turned(open), limits.leastLandMicrometres() / pitch);
        padRadius = limits.widestBlackMicrometres() / 2 / pitch + 0.25;
    }

    private boolean[][] turned(boolean[][] set) {
        boolean[][] turned = new boolean[height][width];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                turned[y][x] = !set[y][x];
            }
        }
        return turned;
    }

    private static boolean inDisc(double dx, double dy, double radius) {
        return dx * dx + dy * dy < radius * radius
                || (Math.abs(dx) <= 0.5 && Math.abs(dy) < radius)
                || (Math.abs(dy) <= 0.5 && Math.abs(dx) < radius);
    }

    private boolean[][] opened(boolean[][] set, double diameter) {
        if (diameter <= 1) {
            return set;
        }
        boolean[][] kept = new boolean[height][width];
        double radius = diameter / 2 + 0.5;
        int reach = (int) Math.ceil(radius) + 1;
        for (double cy = reach; cy < height - reach; cy += 0.5) {
            for (double cx = reach; cx < width - reach; cx += 0.5) {
                if (stamp(set, cx, cy, radius, reach, null)) {
                    stamp(set, cx, cy, radius, reach, kept);
                }
            }
        }
        // The clear margin stands for an endless clear film.
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean rim = x < 2 * reach || y < 2 * reach || x >= width - 2 * reach || y >= height - 2 * reach;
                kept[y][x] |= rim && set[y][x];
            }
        }
        return kept;
    }

    private static boolean stamp(boolean[][] set, double cx, double cy, double radius, int reach, boolean[][] kept) {
        for (int y = (int) cy - reach; y <= cy + reach; y++) {
            for (int x = (int) cx - reach; x <= cx + reach; x++) {
                if (y < 0 || x < 0 || y >= set.length || x >= set[0].length || !inDisc(x - cx, y - cy, radius)) {
                    continue;
                }
                if (kept != null) {
                    kept[y][x] = true;
                } else if (!set[y][x]) {
                    return false;
                }
            }
        }
        return true;
    }

    private boolean onPlate(int x, int y) {
        return x >= margin && y >= margin && x < width - margin && y < height - margin;
    }

    long lostPixels() {
        long count = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                count += onPlate(x, y) && !black[y][x] && !land[y][x] ? 1 : 0;
            }
        }
        return count;
    }

    long shutPixels() {
        long count = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                count += onPlate(x, y) && black[y][x] && !open[y][x] ? 1 : 0;
            }
        }
        return count;
    }

    /** Distance to the nearest land no farther than a given one, else that. */
    private double distance(int x, int y, int most) {
        double best = most;
        for (int v = Math.max(0, y - most); v <= Math.min(height - 1, y + most); v++) {
            for (int u = Math.max(0, x - most); u <= Math.min(width - 1, x + most); u++) {
                if (land[v][u]) {
                    best = Math.min(best, Math.hypot(u - x, v - y));
                }
            }
        }
        return best;
    }

    /** Sizes of the sites in pixels, smallest first. */
    List<Long> siteSizes() {
        boolean[][] site = new boolean[height][width];
        int reach = (int) Math.ceil(padRadius);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (distance(x, y, reach + 1) >= padRadius) {
                    for (int v = y - reach; v <= y + reach; v++) {
                        for (int u = x - reach; u <= x + reach; u++) {
                            site[v][u] |= Math.hypot(u - x, v - y) < padRadius;
                        }
                    }
                }
            }
        }
        List<Long> sizes = new ArrayList<>();
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (site[y][x] && onPlate(x, y)) {
                    sizes.add(flood(site, x, y));
                }
            }
        }
        sizes.sort(null);
        return sizes;
    }

    private long flood(boolean[][] site, int startX, int startY) {
        List<int[]> front = new ArrayList<>();
        site[startY][startX] = false;
        front.add(new int[] {startX, startY});
        for (int i = 0; i < front.size(); i++) {
            for (int k = 0; k < 9; k++) {
                int x = front.get(i)[0] + k % 3 - 1;
                int y = front.get(i)[1] + k / 3 - 1;
                if (onPlate(x, y) && site[y][x]) {
                    site[y][x] = false;
                    front.add(new int[] {x, y});
                }
            }
        }
        return front.size();
    }

    /** Half the width of the widest site in millimetres of copper. */
    double widestHalfWidth() {
        double widest = 0;
        for (int y = margin; y < height - margin; y++) {
            for (int x = margin; x < width - margin; x++) {
                widest = Math.max(widest, open[y][x] ? distance(x, y, margin) : 0);
            }
        }
        return ((widest - 0.25) * pitch + limits.edgeShiftMicrometres() + limits.undercutMicrometres()) / 1000;
    }
}
