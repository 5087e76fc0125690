package greyground.plate.split;

import greyground.plate.Exposure;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.Light;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import greyground.quantity.Refusal;
import greyground.tone.StraightLines;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleFunction;
import java.util.stream.IntStream;

/**
 * How a screened plate prints where the image leaves a uniform critical transmission: land is where the screen passes at least
 * that share of light. Since the doses act through that share alone ({@link DoubleExposure}), one such curve of a screen
 * film serves every split of the two exposures.
 *
 * @param criticals critical transmissions in rising order, the first 0 and the last that of clear screen film
 * @param lightnesses of the print, absolute L*, one for each
 * @param lines through them
 */
@SuppressWarnings("ArrayRecordComponent") // handed on inside this package without copying; equality is never asked
record CriticalTones(double[] criticals, double[] lightnesses, StraightLines lines) {
    CriticalTones(double[] criticals, double[] lightnesses) {
        this(criticals, lightnesses, new StraightLines(criticals, lightnesses));
    }

    // Assumed: how the levels are spread, and how near bare plate is bare.
    private static final int FIRST_STEPS = 8;
    private static final int ROUND = 3;
    private static final double NARROWEST_STEP = 1.0 / 400;
    private static final double BARE = 0.25;

    /**
     * Computes the curve, halving, three at a time, whichever steps of lightness are largest.
     *
     * @param conditions with one exposure through each film; their doses don't matter
     * @param screen the screen's patch
     * @param blurMicrometres standard deviation of the screen's edges as they reach the resist
     * @param widestPixelMicrometres as for {@link VirtualPlate}
     * @param levels critical transmissions to compute, at least 9
     */
    static CriticalTones of(
            PlateConditions conditions,
            FilmPatch screen,
            double blurMicrometres,
            double widestPixelMicrometres,
            int levels) {
        Exposure through = exposure(conditions, Exposure.Sheet.SCREEN);
        Film film = through.film();
        Film soft = new Film(film.clearDensity(), film.blackDensity(), film.spotGrowthMicrometres(), blurMicrometres);
        // The whole blur stands in the film, so that no gap adds to it.
        Light contact = new Light(0, 0, 1);
        double hardening = conditions.resist().throughCureDoseRatio();
        double top = Film.transmission(film.clearDensity());
        DoubleFunction<double[]> printed =
                critical -> point(conditions, screen, soft, contact, hardening, critical, widestPixelMicrometres);
        List<double[]> points = new ArrayList<>(IntStream.rangeClosed(0, FIRST_STEPS)
                .parallel()
                .mapToDouble(i -> top * i / FIRST_STEPS)
                .mapToObj(printed)
                .toList());
        while (points.size() < levels) {
            List<Double> middles = middles(points, Math.min(ROUND, levels - points.size()));
            if (middles.isEmpty()) {
                break;
            }
            points.addAll(middles.parallelStream().map(printed::apply).toList());
            points.sort(Comparator.comparingDouble(at -> at[0]));
        }
        return new CriticalTones(
                points.stream().mapToDouble(point -> point[0]).toArray(),
                points.stream().mapToDouble(point -> point[1]).toArray());
    }

    /** Between those neighbours whose lightness differs most. */
    private static List<Double> middles(List<double[]> points, int count) {
        return IntStream.range(0, points.size() - 1)
                .filter(i -> points.get(i + 1)[0] - points.get(i)[0] > NARROWEST_STEP)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> -Math.abs(points.get(i)[1] - points.get(i + 1)[1])))
                .limit(count)
                .map(i -> (points.get(i)[0] + points.get(i + 1)[0]) / 2)
                .toList();
    }

    private static double[] point(
            PlateConditions conditions,
            FilmPatch screen,
            Film film,
            Light light,
            double hardening,
            double critical,
            double widestPixelMicrometres) {
        Exposure spots = new Exposure(hardening, Exposure.Sheet.SCREEN, film, light);
        Exposure image = new Exposure(hardening * (1 - critical), Exposure.Sheet.POSITIVE, new Film(0, 6, 0, 0), light);
        VirtualPlate plate =
                new VirtualPlate(conditions.withExposures(List.of(spots, image)), screen, widestPixelMicrometres);
        return new double[] {critical, plate.terms(0, FilmPatch.uniform(0)).lightness()};
    }

    /** The one exposure through a film. */
    static Exposure exposure(PlateConditions conditions, Exposure.Sheet sheet) {
        return conditions.exposures().stream()
                .filter(each -> each.sheet() == sheet)
                .findFirst()
                .orElseThrow(() -> Refusal.use("a search of two exposures has none through the "
                        + sheet.name().toLowerCase(Locale.ROOT)
                        + "; it needs one through each film: choose the process photogravure"));
    }

    /** Lightness, straight between levels; past the last as at the last. */
    double lightness(double critical) {
        return lines.value(critical);
    }

    /** Lightness of a plate that nothing opened. */
    double bare() {
        return lightnesses[0];
    }

    /** Greatest critical transmission at which the plate still prints as bare, to a quarter of a unit. */
    double opening() {
        int i = 1;
        while (i < criticals.length - 1 && lightnesses[i] > bare() - BARE) {
            i++;
        }
        double fall = lightnesses[i - 1] - lightnesses[i];
        double share = fall <= 0 ? 0 : (lightnesses[i - 1] - (bare() - BARE)) / fall;
        return criticals[i - 1] + Math.max(0, Math.min(1, share)) * (criticals[i] - criticals[i - 1]);
    }
}
