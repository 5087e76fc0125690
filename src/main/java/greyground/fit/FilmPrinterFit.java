package greyground.fit;

import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.PrintedTint;
import greyground.quantity.Refusal;
import greyground.tone.MonotoneCubic;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * A film printer's clear and black density and its spot growth, found in the measured fields of a film's own wedge strip.
 *
 * <p>A field's light is the area's mean, {@code a 10^-black + (1 - a) 10^-clear}, with {@code a} the share that ink covers once the
 * field's own dots have grown ({@link PrintedTint}). Readings of one field are first made one by their median, so that a reading
 * through a pinhole or a fingerprint is outvoted. Clear and black are those of their own fields; the growth is found from the tints by
 * weighted least squares within its bounds. Its variance is {@code (J' J)^-1 max(1, chi^2 / v)}, as for a test plate, and what clear
 * and black leave unsure of it.
 *
 * @param clear density of the film where nothing is printed
 * @param black density of a solid
 * @param growth in micrometres; empty where no field between clear and solid was measured
 * @param pinholeShare of the solid's worst reading that must be clear film if the rest is as black as the other readings; 0 to 1
 * @param fields as measured and as predicted by these numbers, from clear to solid
 */
public record FilmPrinterFit(
        Estimate clear, Estimate black, Optional<Estimate> growth, double pinholeShare, List<Field> fields) {
    private static final double[] GROWTHS = {-20, -14, -9, -6, -3, 0, 3, 6, 9, 12, 16, 20, 26, 32, 40, 50};
    private static final double LEAST_WINDOW = 0.3;
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
     * @param predicted density by the numbers found
     * @param covered share of the film that ink covers, by Murray and Davies from the measured density
     */
    public record Field(double coverage, int readings, double measured, double predicted, double covered) {
        /** Measured less predicted. */
        public double residual() {
            return measured - predicted;
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
        Level first = levels.get(0);
        Level last = levels.get(levels.size() - 1);
        Estimate clear = new Estimate(first.density(), first.error());
        Estimate black = new Estimate(last.density(), last.error());
        double window = black.value() - clear.value();
        if (window < LEAST_WINDOW) {
            throw Refusal.use("film's solid is " + Refusal.plain(Math.rint(window * 1000) / 1000)
                    + " D above its clear field; a film must have at least " + LEAST_WINDOW
                    + " D: check the readings, or print the film darker");
        }
        List<Level> tints = levels.stream().filter(Level::isTint).toList();
        Optional<Estimate> growth = Optional.empty();
        List<MonotoneCubic> covered = List.of();
        if (!tints.isEmpty()) {
            covered = covered(tints, patches, softnessMicrometres);
            growth = Optional.of(growth(tints, covered, clear, black));
        }
        List<Field> fields = new ArrayList<>();
        int tint = 0;
        for (Level level : levels) {
            double share = level.isTint()
                    ? covered.get(tint++).value(within(growth.orElseThrow().value()))
                    : level.coverage();
            fields.add(new Field(
                    level.coverage(),
                    level.readings(),
                    level.density(),
                    density(share, clear.value(), black.value()),
                    covered(level.density(), clear.value(), black.value())));
        }
        double thinnest = byCoverage.lastEntry().getValue().stream()
                .mapToDouble(FilmReading::density)
                .min()
                .orElseThrow();
        return new FilmPrinterFit(clear, black, growth, pinholes(thinnest, black.value(), clear.value()), fields);
    }

    /** What the errors of clear and black do to the growth adds to that of the tints. */
    private static Estimate growth(List<Level> tints, List<MonotoneCubic> covered, Estimate clear, Estimate black) {
        FitLeastSquares.Solution found = solved(tints, covered, clear.value(), black.value());
        double value = found.values().getEntry(0);
        double own = found.covariance(new double[] {1}).getEntry(0, 0) * Math.max(1, found.varianceOfUnit());
        double byClear = solved(tints, covered, clear.value() + clear.standardError(), black.value())
                        .values()
                        .getEntry(0)
                - value;
        double byBlack = solved(tints, covered, clear.value(), black.value() + black.standardError())
                        .values()
                        .getEntry(0)
                - value;
        return new Estimate(value, Math.sqrt(own + byClear * byClear + byBlack * byBlack));
    }

    private static FitLeastSquares.Solution solved(
            List<Level> tints, List<MonotoneCubic> covered, double clear, double black) {
        FitLeastSquares problem = new FitLeastSquares(
                numbers -> IntStream.range(0, tints.size())
                        .mapToDouble(i -> density(covered.get(i).value(within(numbers[0])), clear, black))
                        .toArray(),
                tints.stream().mapToDouble(Level::density).toArray(),
                tints.stream().mapToDouble(Level::error).toArray(),
                new double[] {GROWTHS[0]},
                new double[] {GROWTHS[GROWTHS.length - 1]},
                new double[] {0.05},
                PRECISION,
                MOST_STEPS);
        return problem.solve(new double[] {murrayDavies(tints, covered, clear, black)});
    }

    /**
     * Share of clear film that makes a solid read too thin: {@code (10^-read - 10^-black) / (10^-clear - 10^-black)}.
     *
     * @param read density of the solid with its pinholes
     */
    public static double pinholes(double read, double black, double clear) {
        return Math.max(0, Math.min(1, 1 - covered(read, clear, black)));
    }

    /** Murray and Davies (Murray 1936): share of ink by the light that passes, 0 at the clear density and 1 at the black. */
    static double covered(double density, double clear, double black) {
        return (Film.transmission(clear) - Film.transmission(density))
                / (Film.transmission(clear) - Film.transmission(black));
    }

    /** For each tint, the share that ink covers as a curve over the growth. The field's own share stands in for its patch's. */
    private static List<MonotoneCubic> covered(List<Level> tints, FilmPatches patches, double softness) {
        double[][] shares = new double[tints.size()][GROWTHS.length];
        IntStream.range(0, tints.size() * GROWTHS.length).parallel().forEach(i -> {
            Level level = tints.get(i / GROWTHS.length);
            FilmPatch patch = patches.at(level.coverage());
            double grown = PrintedTint.covered(patch, GROWTHS[i % GROWTHS.length], softness);
            shares[i / GROWTHS.length][i % GROWTHS.length] =
                    Math.max(0, Math.min(1, grown + level.coverage() - patch.coverage()));
        });
        return Arrays.stream(shares)
                .map(row -> MonotoneCubic.fritschCarlson(GROWTHS, row))
                .toList();
    }

    private static double density(double share, double clear, double black) {
        return -StrictMath.log10(share * Film.transmission(black) + (1 - share) * Film.transmission(clear));
    }

    private static double within(double growth) {
        return Math.max(GROWTHS[0], Math.min(GROWTHS[GROWTHS.length - 1], growth));
    }

    /** The growth at which the tint nearest to half covers about what Murray and Davies read from its density. */
    private static double murrayDavies(List<Level> tints, List<MonotoneCubic> covered, double clear, double black) {
        int middle = IntStream.range(0, tints.size())
                .boxed()
                .min(Comparator.comparingDouble(i -> Math.abs(tints.get(i).coverage() - 0.5)))
                .orElseThrow();
        double share = covered(tints.get(middle).density(), clear, black);
        MonotoneCubic curve = covered.get(middle);
        return Arrays.stream(GROWTHS)
                .boxed()
                .min(Comparator.comparingDouble(grown -> Math.abs(curve.value(grown) - share)))
                .orElseThrow();
    }
}
