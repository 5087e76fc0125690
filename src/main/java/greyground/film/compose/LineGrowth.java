package greyground.film.compose;

import greyground.plate.FilmPatch;
import greyground.plate.PlateConditions;
import greyground.plate.PlateStates;
import greyground.plate.PlateView;
import greyground.plate.VirtualPlate;
import greyground.plate.inspect.FilmLimits;
import java.util.List;
import java.util.stream.IntStream;

/**
 * How far the edges of a drawing lie inside its strokes on the film, so that the plate's growth carries them back, and how thin its strokes and gaps
 * may become.
 *
 * <p>An edge falls where it falls, and not where a film pixel ends. So the pixels that it passes through are black by turns: {@value #LEVELS} kinds of
 * pixel lie in a pattern that has one of each in every {@value #LEVELS} of a row, a column or a diagonal, and the nearer the edge comes to their outer
 * side, the more kinds are black. What n kinds in {@value #LEVELS} print is no n-th part of a pixel, since growth fills the notches; it is measured on a
 * bar of the virtual plate.
 *
 * @param pitchMicrometres of the film that it is for
 * @param insets micrometres: a pixel of a kind is black where its middle lies so deep within a stroke or deeper; rising
 * @param leastBlack micrometres of film, below which a stroke does not wash out
 * @param leastClear micrometres of film, below which the land between two strokes is lost
 */
public record LineGrowth(double pitchMicrometres, List<Double> insets, double leastBlack, double leastClear) {
    /** Kinds of pixel along an edge. */
    public static final int LEVELS = 5;

    /** Width of the bar, about: neither thin nor wiped out. */
    private static final double BAR_MICROMETRES = 200;

    /** Clear film beside it, enough for its edges not to see each other. */
    private static final double CLEAR_MICROMETRES = 300;

    public LineGrowth {
        insets = List.copyOf(insets);
    }

    /** Which kind a pixel of the film is of, 0 to {@code LEVELS - 1}: a knight's move leads from one to the next of its kind. */
    static int kind(int x, int y) {
        return Math.floorMod(x + 2 * y, LEVELS);
    }

    /**
     * What a plate needs.
     *
     * @param given growth of a straight edge, in micrometres, that the shop measured; NaN for the virtual plate's own
     * @param pitchMicrometres of the film
     */
    public static LineGrowth of(PlateConditions conditions, double given, double pitchMicrometres) {
        VirtualPlate plate = new VirtualPlate(conditions.withoutGround());
        double[] outward = IntStream.rangeClosed(0, LEVELS)
                .mapToDouble(black ->
                        (printed(plate, pitchMicrometres, black, false) + printed(plate, pitchMicrometres, black, true))
                                / 2)
                .toArray();
        double more = Double.isNaN(given) ? 0 : given - outward[0];
        List<Double> insets = IntStream.range(0, LEVELS)
                .mapToObj(kind -> (outward[kind] + outward[kind + 1]) / 2 - pitchMicrometres / 2 + more)
                .sorted()
                .toList();
        FilmLimits limits = FilmLimits.of(conditions);
        return new LineGrowth(
                pitchMicrometres, insets, limits.leastOpeningMicrometres(), limits.leastLandMicrometres());
    }

    /** How far a straight edge of whole pixels grows on its way to the print, in micrometres. */
    public double edge() {
        return insets.stream().mapToDouble(each -> each).average().orElse(0);
    }

    /**
     * Half of what a stroke must have on the film, in pixels: however the pixels lie under its middle line, those whose middles are no farther hold whole pixels
     * enough for what washes out, and hang together.
     */
    double leastHalfPixels() {
        double half = Math.ceil(leastBlack / pitchMicrometres) / 2;
        return Math.sqrt(half * half + 0.25);
    }

    /** Width of the thinnest stroke that prints as wide as it is drawn, in micrometres. */
    public double thinnest() {
        return 2 * (leastHalfPixels() * pitchMicrometres + edge());
    }

    /** How far outside a bar's last whole pixel its print ends, with so many kinds of the next black. */
    private static double printed(VirtualPlate plate, double pitch, int black, boolean lying) {
        int bar = (int) Math.max(3, Math.rint(BAR_MICROMETRES / pitch));
        int clear = (int) Math.ceil(CLEAR_MICROMETRES / pitch);
        int length = bar + 2 * clear;
        int width = lying ? LEVELS : length;
        int height = lying ? length : LEVELS;
        int bytesPerRow = (width + 7) / 8;
        byte[] bits = new byte[bytesPerRow * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int along = (lying ? y : x) - clear;
                if (along >= 0 && (along < bar || (along == bar && kind(x, y) < black))) {
                    bits[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        PlateStates states = plate.statesBeyondFilm(FilmPatch.tile(width, height, pitch, bits));
        return end(profile(plate, states, lying), states.grid().pitchMicrometres()) - (clear + bar) * pitch;
    }

    /** Reflectances across the bar. */
    private static double[] profile(VirtualPlate plate, PlateStates states, boolean lying) {
        float[] roots = PlateView.printRoot().of(plate.conditions(), states);
        int width = states.grid().width();
        double[] across = new double[lying ? states.grid().height() : width];
        for (int i = 0; i < roots.length; i++) {
            across[lying ? i / width : i % width] += plate.conditions().paper().reflectance(roots[i]);
        }
        int many = roots.length / across.length;
        for (int i = 0; i < across.length; i++) {
            across[i] /= many;
        }
        return across;
    }

    /** Where a profile last passes the middle of its darkest and lightest, straight between pixel centres. */
    private static double end(double[] profile, double pitch) {
        double dark = Double.MAX_VALUE;
        double light = 0;
        for (double each : profile) {
            dark = Math.min(dark, each);
            light = Math.max(light, each);
        }
        double half = (dark + light) / 2;
        int last = profile.length - 1;
        while (last > 0 && profile[last - 1] > half) {
            last--;
        }
        if (last == 0) {
            return 0;
        }
        double share = (half - profile[last - 1]) / (profile[last] - profile[last - 1]);
        return (last - 0.5 + share) * pitch;
    }
}
