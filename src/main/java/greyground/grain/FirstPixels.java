package greyground.grain;

import java.util.Arrays;

/**
 * For each site of one kind, the pixels it takes before all others: its least dot, then the nearest on its hill, until
 * twice the least dot.
 */
final class FirstPixels {
    /** A first dot never reaches further than this, in spacings: like sites stand at least 0.7 apart. */
    private static final double REACH_IN_SPACINGS = 0.36;

    /** Values of the field that a growing first dot may take; at half coverage they are well inside. */
    private static final float INSIDE = 0.4f;

    private static final int TIMES_LEAST = 2;

    private final int[] first;
    private final int[] pixels;
    private final int least;

    private FirstPixels(int[] first, int[] pixels, int least) {
        this.first = first;
        this.pixels = pixels;
        this.least = least;
    }

    /** How many of each site's pixels make its least dot. */
    int least() {
        return least;
    }

    /** How many pixels a site may take. */
    int count(int site) {
        return first[site + 1] - first[site];
    }

    /** The pixel of the tile that a site takes in its turn {@code k}, from 0 on. */
    int pixel(int site, int k) {
        return pixels[first[site] + k];
    }

    /**
     * Chooses for dots and for lands.
     *
     * @param reserved filled with 1 where dots and 2 where lands will be first, else left 0
     * @return those of dots, then those of lands
     */
    static FirstPixels[] of(
            GrainSites sites, int side, double spacing, float[] field, LeastDot dot, long seed, byte[] reserved) {
        int[][] cores = new int[2 * sites.count][];
        for (int s = 0; s < 2 * sites.count; s++) {
            cores[s] = dot.at(sites.x[s], sites.y[s], side, seed, s);
            for (int pixel : cores[s]) {
                reserved[pixel] = (byte) (s < sites.count ? 1 : 2);
            }
        }
        return new FirstPixels[] {
            ofKind(sites, 0, side, spacing, field, cores, reserved),
            ofKind(sites, 1, side, spacing, field, cores, reserved)
        };
    }

    private static FirstPixels ofKind(
            GrainSites sites, int kind, int side, double spacing, float[] field, int[][] cores, byte[] reserved) {
        int count = sites.count;
        int least = cores[0].length;
        int most = TIMES_LEAST * least;
        int[] first = new int[count + 1];
        int[] pixels = new int[count * most];
        double reach = Math.min(REACH_IN_SPACINGS * spacing, Math.sqrt(most / Math.PI) + 1);
        int ring = (int) Math.ceil(reach);
        long[] near = new long[(2 * ring + 1) * (2 * ring + 1)];
        int filled = 0;
        for (int s = 0; s < count; s++) {
            int site = kind * count + s;
            int px = (int) sites.x[site];
            int py = (int) sites.y[site];
            int found = 0;
            for (int dy = -ring; dy <= ring; dy++) {
                for (int dx = -ring; dx <= ring; dx++) {
                    double offX = px + dx + 0.5 - sites.x[site];
                    double offY = py + dy + 0.5 - sites.y[site];
                    int pixel = Math.floorMod(py + dy, side) * side + Math.floorMod(px + dx, side);
                    double off2 = offX * offX + offY * offY;
                    float value = kind == 0 ? field[pixel] : 1 - field[pixel];
                    if (reserved[pixel] == 0 && value < INSIDE && off2 < reach * reach) {
                        near[found++] = ((long) (off2 / (reach * reach) * (1 << 24)) << 32) | pixel;
                    }
                }
            }
            Arrays.sort(near, 0, found);
            first[s] = filled;
            System.arraycopy(cores[site], 0, pixels, filled, least);
            filled += least;
            for (int k = 0; k < Math.min(found, most - least); k++) {
                int pixel = (int) near[k];
                reserved[pixel] = (byte) (kind + 1);
                pixels[filled++] = pixel;
            }
        }
        first[count] = filled;
        return new FirstPixels(first, Arrays.copyOf(pixels, filled), least);
    }
}
