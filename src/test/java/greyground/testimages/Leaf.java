package greyground.testimages;

/** A pressed leaf without a ground: colour with alpha, its edge soft, the space around it wholly clear. */
final class Leaf implements Picture {
    @Override
    public String file() {
        return "leaf-alpha.png";
    }

    @Override
    public int width() {
        return 900;
    }

    @Override
    public int height() {
        return 1260;
    }

    @Override
    public int bands() {
        return 4;
    }

    @Override
    public int bits() {
        return 8;
    }

    @Override
    public void row(int y, int[] samples) {
        for (int x = 0; x < width(); x++) {
            double u = (x - 450) / 1000.0;
            double v = (y - 90) / 1000.0;
            double bend = u - 0.10 * (v - 0.45) * (v - 0.45) + 0.02;
            double along = Noise.clamp(v / 0.86);
            double blade = 0.80 * Math.sqrt(along) * (1 - along) * (0.75 + 0.5 * along);
            double teeth = 0.016 * Math.abs(2 * frac(along * 26 - Math.abs(bend) * 9) - 1) * Noise.step(0, 0.1, along);
            double inside = v < 0 ? -1 : blade - teeth + 0.012 * Noise.fractal(u * 9, v * 9, 3, 301) - Math.abs(bend);
            double stalk = 0.0085 + 0.004 * (v - 0.8) - Math.abs(bend - 0.12 * Math.max(0, v - 0.84) * (v - 0.84) * 9);
            boolean onStalk = v > 0.80 && v < 1.07;
            double alpha = Math.max(
                    along > 0 && along < 1 ? Noise.step(-0.001, 0.001, inside) : 0,
                    onStalk ? Noise.step(-0.001, 0.001, stalk) : 0);
            double middle = Noise.step(0.0075, 0.003, Math.abs(bend)) * (v > 0.02 ? 1 : 0);
            double side = frac((along - 0.62 * Math.abs(bend) - 0.03 * (bend > 0 ? 1 : 0)) * -11 - 3 * bend * bend);
            double vein = Noise.step(0.085, 0.02, Math.abs(side - 0.5)) * 0.75;
            double mesh = Math.abs(2 * Noise.fractal(u * 34, v * 34, 2, 302) - 1);
            double fine = Noise.step(0.10, 0.02, mesh) * 0.35;
            double veins = Math.max(middle, Math.max(vein, fine));
            double flesh = 0.20 + 0.22 * Noise.fractal(u * 5, v * 5, 4, 303) + 0.12 * side;
            double spots = Noise.step(0.64, 0.74, Noise.fractal(u * 12 + 4, v * 12, 3, 304));
            double light =
                    Noise.mix(flesh, 0.62, veins * 0.75) * (1 - 0.55 * spots) * (onStalk && inside < 0 ? 0.8 : 1);
            samples[4 * x] = code(light * 0.92);
            samples[4 * x + 1] = code(light * 0.74);
            samples[4 * x + 2] = code(light * 0.40);
            samples[4 * x + 3] = (int) Math.round(255 * alpha);
            if (alpha == 0) {
                samples[4 * x] = 0;
                samples[4 * x + 1] = 0;
                samples[4 * x + 2] = 0;
            }
        }
    }

    private static double frac(double value) {
        return value - Math.floor(value);
    }
}
