package greyground.testimages;

/** Smooth noise as a function of place and seed alone, so that any row of a picture can be made by itself. */
final class Noise {
    private Noise() {}

    /** A number 0..1 for a whole place. */
    static double hash(long x, long y, long seed) {
        long h = x * 0x9E3779B97F4A7C15L ^ y * 0xC2B2AE3D27D4EB4FL ^ seed * 0x165667B19E3779F9L;
        h = (h ^ (h >>> 30)) * 0xBF58476D1CE4E5B9L;
        h = (h ^ (h >>> 27)) * 0x94D049BB133111EBL;
        h ^= h >>> 31;
        return (h >>> 11) * 0x1.0p-53;
    }

    /** Value noise, 0..1, features of about one unit. */
    static double value(double x, double y, long seed) {
        double left = Math.floor(x);
        double top = Math.floor(y);
        double u = fade(x - left);
        double v = fade(y - top);
        long i = (long) left;
        long j = (long) top;
        double above = mix(hash(i, j, seed), hash(i + 1, j, seed), u);
        double below = mix(hash(i, j + 1, seed), hash(i + 1, j + 1, seed), u);
        return mix(above, below, v);
    }

    /** Octaves of value noise, 0..1, mean one half. */
    static double fractal(double x, double y, int octaves, long seed) {
        double sum = 0;
        double weight = 0.5;
        double total = 0;
        double scale = 1;
        for (int i = 0; i < octaves; i++) {
            sum += weight * value(x * scale + 17.3 * i, y * scale - 9.1 * i, seed + i);
            total += weight;
            weight /= 2;
            scale *= 2.03;
        }
        return sum / total;
    }

    static double mix(double a, double b, double t) {
        return a + (b - a) * t;
    }

    static double clamp(double value) {
        return Math.max(0, Math.min(1, value));
    }

    /** 0 below {@code from}, 1 above {@code to}, smooth between; falling when from is the greater. */
    static double step(double from, double to, double value) {
        return fade(clamp((value - from) / (to - from)));
    }

    private static double fade(double t) {
        return t * t * (3 - 2 * t);
    }
}
