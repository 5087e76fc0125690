package greyground.testimages;

/**
 * Patches of known grey in 16 bits: 21 even steps of CIE L* from 0 to 100 in three rows of seven, then steps of one L* next to
 * black and next to white, then a ramp.
 */
final class StepChart implements Picture {
    @Override
    public String file() {
        return "step-chart.png";
    }

    @Override
    public int width() {
        return 1680;
    }

    @Override
    public int height() {
        return 1200;
    }

    @Override
    public int bands() {
        return 1;
    }

    @Override
    public int bits() {
        return 16;
    }

    @Override
    public void row(int y, int[] samples) {
        for (int x = 0; x < width(); x++) {
            samples[x] = code(luminance(lightness(x, y)));
        }
    }

    /** L* of a place: mid grey ground, patches of 200 by 220 in cells of 240 by 260, end steps, ramp. */
    static double lightness(int x, int y) {
        double ground = 57.5;
        if (y < 780) {
            boolean patch = x % 240 >= 20 && x % 240 < 220 && y % 260 >= 20 && y % 260 < 240;
            return patch ? 5.0 * (x / 240 + 7 * (y / 260)) : ground;
        }
        if (y < 980) {
            boolean patch = x % 140 >= 10 && x % 140 < 130 && y >= 800 && y < 960;
            int step = x / 140;
            // 0 to 5 next to black, then 95 to 100 next to white.
            return patch ? (step < 6 ? step : 89 + step) : ground;
        }
        boolean ramp = x >= 20 && x < 1660 && y >= 1000 && y < 1180;
        return ramp ? 100.0 * (x - 20) / 1639 : ground;
    }

    private static double luminance(double lightness) {
        double root = (lightness + 16) / 116;
        return lightness > 8 ? root * root * root : lightness * 27 / 24389;
    }
}
