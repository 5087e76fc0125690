package greyground.testimages;

/**
 * Brown ink washed over cream paper: ranges of hills in mist, a lake, pines on a near bank, a small boat. Each wash darkens
 * what lies under it, gathers at its upper edge and grains in the paper.
 */
final class WashDrawing implements Picture {
    private static final double LAKE = 0.655;

    private final int width;
    private final int height;
    private final int seed;
    private final String file;

    WashDrawing() {
        this("wash-lake.png", 1680, 1240, 7);
    }

    WashDrawing(String file, int width, int height, int seed) {
        this.file = file;
        this.width = width;
        this.height = height;
        this.seed = seed * 1000;
    }

    @Override
    public String file() {
        return file;
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public int bands() {
        return 3;
    }

    @Override
    public int bits() {
        return 8;
    }

    @Override
    public void row(int y, int[] samples) {
        for (int x = 0; x < width; x++) {
            double u = (double) x / width * 1.36;
            double v = (double) y / height;
            double tooth = Noise.fractal(u * 190, v * 140, 2, seed + 1) - 0.5;
            double ink = Math.max(0, ink(u, v) * (1 + 0.30 * tooth));
            double paper = 0.90 * (1 + 0.018 * tooth);
            samples[3 * x] = code(paper * 1.02 * StrictMath.exp(-0.86 * ink));
            samples[3 * x + 1] = code(paper * 0.96 * StrictMath.exp(-1.00 * ink));
            samples[3 * x + 2] = code(paper * 0.84 * StrictMath.exp(-1.14 * ink));
        }
    }

    /** Ink laid down at a place, as natural density. */
    private double ink(double u, double v) {
        // The wash stops short of the sheet's edge, raggedly.
        double ragged = 0.022 * Noise.fractal(u * 6, v * 6, 4, seed + 2);
        double inside = Math.min(Math.min(u, 1.36 - u), Math.min(v, 1 - v)) - 0.035 - ragged;
        if (inside < 0) {
            return 0;
        }
        double ink = sky(u, v);
        for (int range = 0; range < 5; range++) {
            ink += hills(range, u, v);
        }
        if (v > LAKE) {
            ink += water(u, v);
        }
        ink += 1.5 * boat(u, v);
        // The nearest wash is the last and strongest; what it covers hardly shows through.
        double near = bank(u, v);
        ink = ink * StrictMath.exp(-0.9 * near) + 2.3 * near;
        // A drying edge gathers pigment.
        double rim = 0.16 * Noise.step(0.006, 0, inside);
        return Noise.step(0, 0.0016, inside) * (ink + rim);
    }

    private double sky(double u, double v) {
        double drift = Noise.fractal(u * 1.3 + 0.6 * Noise.fractal(u * 2, v * 3, 3, seed + 3), v * 3.2, 5, seed + 4);
        double cloud = Noise.step(0.42, 0.72, drift);
        double du = u - 0.93;
        double dv = v - 0.235;
        double sun = Noise.step(0.056, 0.060, Math.sqrt(du * du + dv * dv));
        return (0.05 + 0.40 * cloud * Noise.step(0.62, 0.05, v) + 0.22 * Noise.step(0.34, 0, v)) * (0.12 + 0.88 * sun);
    }

    private double hills(int range, double u, double v) {
        double near = range / 4.0;
        double scale = 1.5 + 1.2 * near;
        double rough = Noise.fractal(u * scale + 3.7 * range, 0.4 + range, 6, seed + 20 + range);
        double peak = 1 - Math.abs(2 * rough - 1) * 1.5;
        double lift = 0.27 - 0.19 * near;
        double crest = LAKE - 0.045 * (1 - near) - lift * (0.30 + 0.85 * peak);
        // Hills leave the middle open for the light.
        double opening = Noise.step(0.62, 0.05, Math.abs(u - 0.85));
        crest += opening * 0.10 * (0.4 + near);
        double below = v - crest;
        if (below < 0 || v > LAKE) {
            return 0;
        }
        double mist = StrictMath.exp(-below / (0.035 + 0.09 * near));
        double bloom = Noise.fractal(u * 5, v * 7, 4, seed + 40 + range);
        double edge = 0.22 * StrictMath.exp(-below / 0.0022);
        return (0.10 + 0.34 * near) * (0.20 + 0.80 * mist + 0.55 * (bloom - 0.5)) + edge * (0.35 + near);
    }

    private double water(double u, double v) {
        double depth = (v - LAKE) / (1 - LAKE);
        double stroke = Noise.fractal(u * (3 + 2 * depth), (v - LAKE) * 95 / (0.35 + depth), 4, seed + 60);
        double shine = StrictMath.exp(-(u - 0.93) * (u - 0.93) / (0.006 + 0.03 * depth));
        double reflected = 0.42 * StrictMath.exp(-depth / 0.20) * (1 - 0.75 * shine);
        return (reflected + 0.10 + 0.34 * depth)
                * (0.25 + 1.3 * Noise.step(0.35 + 0.15 * shine, 0.66, stroke))
                * (1 - 0.6 * shine);
    }

    private double boat(double u, double v) {
        double x = (u - 0.66) / 0.052;
        double y = (v - 0.765) / 0.016;
        double wobble = 0.10 * (Noise.value(u * 300, v * 300, seed + 70) - 0.5);
        double hull = y + 0.55 * (1 - x * x * 0.9) * 0.2 - 0.15 * x * x;
        double dark = 0;
        if (Math.abs(x) < 1 + wobble
                && y > -0.35 + 0.65 * (0.35 - 0.55 * x * x)
                && hull < 0.75 - 0.75 * x * x * x * x) {
            dark = 1.7;
        }
        // Two people sit in it; below hangs the reflection.
        for (double seat : new double[] {-0.30, 0.28}) {
            double px = (x - seat) / 0.10;
            double body = px * px + (y + 0.55) * (y + 0.55) / 0.55;
            double head = px * px * 2.2 + (y + 1.55) * (y + 1.55) * 5.0;
            if (body < 1 || head < 1) {
                dark = 1.6;
            }
        }
        double hang = Noise.step(2.6, 0.7, y) * Noise.step(0.95, 0.55, Math.abs(x)) * (y > 0.6 ? 1 : 0);
        double ripples = Noise.step(0.40, 0.60, Noise.value(u * 30, v * 230, seed + 71));
        return dark + 0.8 * hang * ripples;
    }

    private double bank(double u, double v) {
        double crest = 0.865
                + 0.07 * Noise.fractal(u * 2.2, 3, 4, seed + 80)
                - 0.17 * Noise.step(0.52, 0.0, u)
                + 0.17 * Noise.step(0.50, 1.0, u)
                - 0.10 * Noise.step(1.12, 1.36, u);
        double below = v - crest + 0.012 * Noise.fractal(u * 60, v * 12, 3, seed + 81);
        double dark = below > 0
                ? 0.95 + 0.9 * Noise.fractal(u * 9, v * 14, 4, seed + 82) - 0.5 * StrictMath.exp(-below / 0.03)
                : 0;
        for (int tree = 0; tree < 9; tree++) {
            dark = Math.max(dark, pine(tree, u, v, tree < 6 ? 0.07 + 0.066 * tree : 1.16 + 0.062 * (tree - 6)));
        }
        return dark;
    }

    private double pine(int tree, double u, double v, double place) {
        double tall = 0.20 + 0.24 * Noise.hash(tree, 1, seed + 90) - (tree >= 6 ? 0.08 : 0);
        double at = place + 0.022 * (Noise.hash(tree, 2, seed + 90) - 0.5);
        double foot = 0.865
                + 0.035
                - 0.17 * Noise.step(0.52, 0.0, at)
                + 0.17 * Noise.step(0.50, 1.0, at)
                - 0.10 * Noise.step(1.12, 1.36, at);
        double up = (foot - v) / tall;
        if (up < -0.1 || up > 1) {
            return 0;
        }
        double lean = 0.03 * (Noise.hash(tree, 3, seed + 90) - 0.5) * up;
        double aside = u - at - lean;
        double bough =
                up * (11 + 5 * Noise.hash(tree, 4, seed + 90)) + 0.9 * Noise.value(u * 26, up * 3, seed + 91 + tree);
        double whorl = bough - Math.floor(bough);
        double reach = (0.052 + 0.02 * Noise.hash(tree, 5, seed + 90))
                * (1.02 - up)
                * (0.42 + 0.75 * (1 - whorl))
                * (0.65 + 0.7 * Noise.value(aside < 0 ? 3 : 8, bough * 1.7, seed + 110 + tree));
        double needles = 0.010 * (Noise.fractal(u * 120, v * 170, 3, seed + 130) - 0.5);
        double in = reach - Math.abs(aside) + needles;
        double crown = up > 0.10 ? Noise.step(-0.0008, 0.0022, in) : 0;
        double trunk = Noise.step(0.0042, 0.0026, Math.abs(aside) / (1.1 - up * 0.8));
        double tone = 1.15 + 0.9 * (Noise.fractal(u * 40, v * 40, 3, seed + 131) - 0.3);
        return Math.max(crown * tone, trunk * 1.7);
    }
}
