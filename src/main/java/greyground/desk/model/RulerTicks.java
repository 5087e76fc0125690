package greyground.desk.model;

import java.util.ArrayList;
import java.util.List;

/** Where the ticks of a ruler stand, so that they are neither crowded nor sparse and their numbers are round. */
public final class RulerTicks {
    private static final double LEAST_PIXELS = 56;

    private RulerTicks() {}

    /**
     * A tick.
     *
     * @param pixel from the window's edge
     * @param value in the ruler's unit
     * @param numbered whether its number is written
     */
    public record Tick(double pixel, double value, boolean numbered) {}

    /**
     * The ticks within a window.
     *
     * @param start value at the window's edge, in the ruler's unit
     * @param perPixel length of a pixel in that unit, above 0
     * @param pixels of the window
     */
    public static List<Tick> of(double start, double perPixel, int pixels) {
        double step = step(LEAST_PIXELS * perPixel);
        double small = step / parts(step);
        List<Tick> ticks = new ArrayList<>();
        long first = (long) Math.ceil(start / small);
        long last = (long) Math.floor((start + perPixel * pixels) / small);
        long every = Math.round(step / small);
        for (long i = first; i <= last; i++) {
            ticks.add(new Tick((i * small - start) / perPixel, i * small, Math.floorMod(i, every) == 0));
        }
        return ticks;
    }

    /** The least of 1, 2 and 5 times a power of ten that is no smaller. */
    static double step(double least) {
        double power = Math.pow(10, Math.floor(Math.log10(least)));
        for (double times : new double[] {1, 2, 5}) {
            if (times * power >= least * (1 - 1e-9)) {
                return times * power;
            }
        }
        return 10 * power;
    }

    private static int parts(double step) {
        double power = Math.pow(10, Math.floor(Math.log10(step) + 1e-9));
        return Math.round(step / power) == 2 ? 4 : 5;
    }

    public static String words(double value, double perPixel) {
        double step = step(LEAST_PIXELS * perPixel);
        int decimals = (int) Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
        String text = String.format(java.util.Locale.ROOT, "%." + decimals + "f", value);
        return text.matches("-0(\\.0+)?") ? text.substring(1) : text;
    }
}
