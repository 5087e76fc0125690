package greyground.grain;

/** The hilly field over a tile whose peaks are dots and whose troughs are lands: a Gaussian for each site. */
final class GrainField {
    /** Width of a hill in spacings; found by trial: narrower hills leave ragged necks, wider ones drown close pairs. */
    private static final double HILL_IN_SPACINGS = 0.35;

    private static final double CUT = 3.1;
    private static final int FINE = 32;
    private static final int BINS = 1 << 16;

    private GrainField() {}

    /** The field in order of blackening: 0 first black, 1 last, every stretch of values over an equal share of pixels. */
    static float[] evenlySpread(GrainSites sites, int side, double spacing) {
        float[] field = new float[side * side];
        double deviation = HILL_IN_SPACINGS * spacing;
        int reach = (int) Math.ceil(CUT * deviation);
        // The hill's profile at 1/32 pixel steps: enough, since the field is only compared with itself.
        float[] profile = new float[(reach + 2) * FINE + 1];
        for (int i = 0; i < profile.length; i++) {
            double d = (double) i / FINE;
            profile[i] = (float) StrictMath.exp(-d * d / (2 * deviation * deviation));
        }
        float[] across = new float[2 * reach + 1];
        for (int s = 0; s < 2 * sites.count; s++) {
            hill(sites, s, side, reach, profile, across, field);
        }
        spread(field);
        return field;
    }

    private static void hill(
            GrainSites sites, int s, int side, int reach, float[] profile, float[] across, float[] field) {
        int px = (int) sites.x[s];
        int py = (int) sites.y[s];
        double offX = px + 0.5 - sites.x[s];
        double offY = py + 0.5 - sites.y[s];
        for (int k = -reach; k <= reach; k++) {
            across[k + reach] = profile[(int) (Math.abs(k + offX) * FINE + 0.5)];
        }
        boolean wraps = px < reach || px + reach >= side;
        for (int j = -reach; j <= reach; j++) {
            float down = profile[(int) (Math.abs(j + offY) * FINE + 0.5)] * (s < sites.count ? 1 : -1);
            int row = Math.floorMod(py + j, side) * side;
            for (int k = 0; k <= 2 * reach; k++) {
                int column = wraps ? Math.floorMod(px - reach + k, side) : px - reach + k;
                field[row + column] += down * across[k];
            }
        }
    }

    /** Replaces each value by the share of pixels above it. */
    private static void spread(float[] field) {
        float most = 0;
        for (float value : field) {
            most = Math.max(most, Math.abs(value));
        }
        int[] count = new int[BINS];
        float scale = (BINS - 1) / (2 * most);
        for (float value : field) {
            count[(int) ((most - value) * scale)]++;
        }
        float[] share = new float[BINS];
        int above = 0;
        for (int b = 0; b < BINS; b++) {
            share[b] = (above + count[b] * 0.5f) / field.length;
            above += count[b];
        }
        for (int i = 0; i < field.length; i++) {
            field[i] = share[(int) ((most - field[i]) * scale)];
        }
    }

    /** 1 minus the field: lands become dots. */
    static float[] mirrored(float[] field) {
        float[] mirror = new float[field.length];
        for (int i = 0; i < field.length; i++) {
            mirror[i] = 1 - field[i];
        }
        return mirror;
    }
}
