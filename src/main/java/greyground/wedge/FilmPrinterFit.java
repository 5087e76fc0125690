package greyground.wedge;

import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.PrintedTint;
import greyground.quantity.Refusal;
import greyground.tone.MonotoneCubic;
import greyground.tone.ToneValue;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * A film printer's clear and black density and its spot growth, found in the measured fields of a film's own wedge strip.
 *
 * <p>A field's light is the area's mean, {@code a 10^-black + (1 - a) 10^-clear}, with {@code a} the share that ink covers once the
 * field's own dots have grown ({@link PrintedTint}). Readings of one field are first made one by their median, so that a reading
 * through a pinhole or a fingerprint is outvoted; then the three numbers are found together by weighted least squares within their
 * allowed ranges. Covariance is {@code (J' J)^-1 max(1, chi^2 / v)}, as for a test plate.
 *
 * @param clear density of the film where nothing is printed
 * @param black density of a solid
 * @param growth in micrometres; empty where no field between clear and solid was measured
 * @param pinholeShare of the solid's worst reading that must be clear film if the rest is as black as the other readings; 0 to 1
 * @param fields as measured and as foretold by these numbers, from clear to solid
 */
public record FilmPrinterFit(
        Estimate clear, Estimate black, Optional<Estimate> growth, double pinholeShare, List<Field> fields) {
    private static final double[] GROWTHS = {-20, -14, -9, -6, -3, 0, 3, 6, 9, 12, 16, 20, 26, 32, 40, 50};
    private static final double LEAST_WINDOW = 0.3;
    private static final double MOST_CLEAR = 1.5;
    private static final double MOST_BLACK = 6;
    private static final double PRECISION = 1e-9;
    private static final int MOST_STEPS = 100;

    public FilmPrinterFit {
        fields = List.copyOf(fields);
    }

    /**
     * A number found.
     *
     * @param value most likely
     * @param standardError of it
     */
    public record Estimate(double value, double standardError) {
        /** Half the width of the interval that holds the true value 19 times in 20 (normal errors). */
        public double half95() {
            return 1.96 * standardError;
        }
    }

    /**
     * One coverage of the strip.
     *
     * @param coverage in the file, 0 to 1
     * @param readings of it
     * @param measured median density
     * @param foretold density by the numbers found
     * @param covered share of the film that ink covers, by Murray and Davies from the measured density
     */
    public record Field(double coverage, int readings, double measured, double foretold, double covered) {
        /** Measured less foretold. */
        public double residual() {
            return measured - foretold;
        }
    }

    /** Median of a field's readings, and its error. */
    private record Level(double coverage, int readings, double density, double error) {
        static Level of(double coverage, List<FilmReading> readings) {
            double[] sorted =
                    readings.stream().mapToDouble(FilmReading::density).sorted().toArray();
            int n = sorted.length;
            double median = n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
            double error = readings.stream()
                    .mapToDouble(FilmReading::standardError)
                    .max()
                    .orElseThrow();
            // A median of many normal readings scatters sqrt(pi / 2) times as widely as their mean.
            return new Level(coverage, n, median, error / Math.sqrt(n) * (n > 2 ? Math.sqrt(Math.PI / 2) : 1));
        }

        boolean isTint() {
            return coverage > 0 && coverage < 1;
        }
    }

    /**
     * Fits.
     *
     * @param readings at least one of clear film and one of a solid; those between tell the growth
     * @param patches the film's own tones
     * @param softnessMicrometres of the printer's edges, as the workshop has it
     */
    public static FilmPrinterFit of(List<FilmReading> readings, FilmPatches patches, double softnessMicrometres) {
        TreeMap<Double, List<FilmReading>> byCoverage = new TreeMap<>();
        readings.forEach(reading -> byCoverage
                .computeIfAbsent(reading.coverage(), none -> new ArrayList<>())
                .add(reading));
        if (!byCoverage.containsKey(0.0) || !byCoverage.containsKey(1.0)) {
            throw Refusal.use("film readings lack the " + (byCoverage.containsKey(0.0) ? "solid" : "clear")
                    + " field; coverage 0 % and 100 % must both be there: measure both ends of the strip's lower row");
        }
        List<Level> levels = new ArrayList<>();
        byCoverage.forEach((coverage, all) -> levels.add(Level.of(coverage, all)));
        double clear = levels.get(0).density();
        double black = levels.get(levels.size() - 1).density();
        if (black - clear < LEAST_WINDOW) {
            throw Refusal.use("film's solid is " + Refusal.plain(Math.rint((black - clear) * 1000) / 1000)
                    + " D above its clear field; a film must have at least " + LEAST_WINDOW
                    + " D: check the readings, or print the film darker");
        }
        boolean tints = levels.stream().anyMatch(Level::isTint);
        List<MonotoneCubic> covered = tints ? covered(levels, patches, softnessMicrometres) : List.of();
        FitLeastSquares problem = new FitLeastSquares(
                numbers -> densities(levels, covered, numbers),
                levels.stream().mapToDouble(Level::density).toArray(),
                levels.stream().mapToDouble(Level::error).toArray(),
                Arrays.copyOf(new double[] {0, 0, GROWTHS[0]}, tints ? 3 : 2),
                Arrays.copyOf(new double[] {MOST_CLEAR, MOST_BLACK, GROWTHS[GROWTHS.length - 1]}, tints ? 3 : 2),
                Arrays.copyOf(new double[] {1e-4, 1e-4, 0.05}, tints ? 3 : 2),
                PRECISION,
                MOST_STEPS);
        double[] start = tints
                ? new double[] {clear, black, murrayDavies(levels, covered, clear, black)}
                : new double[] {clear, black};
        FitLeastSquares.Solution found = problem.solve(start);
        double wider = Math.sqrt(Math.max(1, found.varianceOfUnit()));
        double[] scales = Arrays.copyOf(new double[] {0.1, 0.1, 5}, start.length);
        List<Estimate> estimates = IntStream.range(0, start.length)
                .mapToObj(i -> new Estimate(
                        found.values().getEntry(i),
                        wider * Math.sqrt(found.covariance(scales).getEntry(i, i))))
                .toList();
        double[] foretold = densities(levels, covered, found.values().toArray());
        List<Field> fields = new ArrayList<>();
        for (int i = 0; i < levels.size(); i++) {
            Level level = levels.get(i);
            double share = ToneValue.area(
                    level.density(), estimates.get(0).value(), estimates.get(1).value(), 1);
            fields.add(new Field(level.coverage(), level.readings(), level.density(), foretold[i], share));
        }
        return new FilmPrinterFit(
                estimates.get(0),
                estimates.get(1),
                tints ? Optional.of(estimates.get(2)) : Optional.empty(),
                pinholes(byCoverage.lastEntry().getValue(), black, clear),
                fields);
    }

    /**
     * Share of clear film that makes a solid read too thin: {@code (10^-read - 10^-black) / (10^-clear - 10^-black)}.
     *
     * @param read density of the solid with its pinholes
     */
    public static double pinholes(double read, double black, double clear) {
        double opaque = Film.transmission(black);
        double share = (Film.transmission(read) - opaque) / (Film.transmission(clear) - opaque);
        return Math.max(0, Math.min(1, share));
    }

    private static double pinholes(List<FilmReading> solids, double black, double clear) {
        double worst = solids.stream().mapToDouble(FilmReading::density).min().orElseThrow();
        return pinholes(worst, black, clear);
    }

    /** For each tint, the share that ink covers as a curve over the growth. The field's own share stands in for its patch's. */
    private static List<MonotoneCubic> covered(List<Level> levels, FilmPatches patches, double softness) {
        double[][] shares = new double[levels.size()][GROWTHS.length];
        IntStream.range(0, levels.size() * GROWTHS.length).parallel().forEach(i -> {
            Level level = levels.get(i / GROWTHS.length);
            if (level.isTint()) {
                FilmPatch patch = patches.at(level.coverage());
                double grown = PrintedTint.covered(patch, GROWTHS[i % GROWTHS.length], softness);
                shares[i / GROWTHS.length][i % GROWTHS.length] =
                        Math.max(0, Math.min(1, grown + level.coverage() - patch.coverage()));
            }
        });
        return Arrays.stream(shares)
                .map(row -> MonotoneCubic.fritschCarlson(GROWTHS, row))
                .toList();
    }

    private static double[] densities(List<Level> levels, List<MonotoneCubic> covered, double[] numbers) {
        double clear = Film.transmission(numbers[0]);
        double opaque = Film.transmission(numbers[1]);
        double[] densities = new double[levels.size()];
        for (int i = 0; i < densities.length; i++) {
            Level level = levels.get(i);
            double share = level.isTint() ? covered.get(i).value(within(numbers[2])) : level.coverage();
            densities[i] = -StrictMath.log10(share * opaque + (1 - share) * clear);
        }
        return densities;
    }

    private static double within(double growth) {
        return Math.max(GROWTHS[0], Math.min(GROWTHS[GROWTHS.length - 1], growth));
    }

    /** The growth at which the tint nearest to half covers what Murray and Davies read from its density. */
    private static double murrayDavies(List<Level> levels, List<MonotoneCubic> covered, double clear, double black) {
        int middle = IntStream.range(0, levels.size())
                .filter(i -> levels.get(i).isTint())
                .boxed()
                .min((a, b) -> Double.compare(
                        Math.abs(levels.get(a).coverage() - 0.5),
                        Math.abs(levels.get(b).coverage() - 0.5)))
                .orElseThrow();
        double share = ToneValue.area(levels.get(middle).density(), clear, black, 1);
        MonotoneCubic curve = covered.get(middle);
        int best = 0;
        for (int i = 0; i < GROWTHS.length; i++) {
            if (Math.abs(curve.pointValue(i) - share) < Math.abs(curve.pointValue(best) - share)) {
                best = i;
            }
        }
        return GROWTHS[best];
    }
}
