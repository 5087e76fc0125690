package greyground.plate;

/** Adds up one patch of plate, stage by stage, into the terms of its tone. */
final class ToneMeasure {
    private static final int QUARTERS = 4;

    /** Ink beyond plate tone that counts as printed, far below what darkens paper visibly. */
    private static final double LEAST_PRINTED_MICROMETRES = 1e-4;

    private final PlateConditions conditions;
    private final double[] roots = new double[QUARTERS];
    private final double[] weights = new double[QUARTERS];
    private double soft;
    private double open;
    private double land;
    private double printed;
    private double depth;
    private double ink;
    private double film;

    private ToneMeasure(PlateConditions conditions) {
        this.conditions = conditions;
    }

    /**
     * Measures a patch.
     *
     * @param coverage to report beside the terms
     * @param base the film whose weights count
     */
    static ToneTerms of(PlateConditions conditions, double coverage, PlateStates states, FilmPatch base) {
        ToneMeasure measure = new ToneMeasure(conditions);
        measure.add(states, base);
        return measure.terms(coverage);
    }

    private void add(PlateStates states, FilmPatch base) {
        int width = states.grid().width();
        int height = states.grid().height();
        double[] across = base.weightsAcross(width);
        double[] down = base.weightsDown(height);
        double threshold = conditions.resist().throughCureDoseRatio();
        float tone = (float) conditions.wipe().plateToneMicrometres();
        double toneOnPaper = tone * conditions.ink().transferFraction();
        RootTable table = new RootTable(conditions.ink(), conditions.paper(), states.printMicrometres());
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                double weight = across[x] * down[y];
                soft += states.dose()[i] < threshold ? weight : 0;
                open += states.covered()[i] ? 0 : weight;
                land += states.depthMicrometres()[i] == 0 ? weight : 0;
                depth += weight * states.depthMicrometres()[i];
                ink += weight * (states.inkMicrometres()[i] - tone);
                if (states.printMicrometres()[i] - toneOnPaper > LEAST_PRINTED_MICROMETRES) {
                    printed += weight;
                    film += weight * states.printMicrometres()[i];
                }
                int quarter = (x * 2 >= width ? 1 : 0) + (y * 2 >= height ? 2 : 0);
                roots[quarter] += weight * table.root(states.printMicrometres()[i]);
                weights[quarter] += weight;
            }
        }
    }

    private ToneTerms terms(double coverage) {
        double rootSum = 0;
        double area = 0;
        for (int q = 0; q < QUARTERS; q++) {
            rootSum += roots[q];
            area += weights[q];
        }
        double reflectance = conditions.paper().reflectance(rootSum / area);
        double meanFilm = printed == 0 ? 0 : film / printed;
        return new ToneTerms(
                coverage,
                soft / area,
                open / area,
                land / area,
                depth / area,
                ink / area,
                depth == 0 ? 0 : ink / depth,
                printed / area,
                meanFilm,
                conditions.paper().density() + conditions.ink().density(meanFilm),
                -StrictMath.log10(reflectance),
                Paper.lightness(reflectance),
                error());
    }

    /** Standard error of the mean lightness from how the patch's four quarters differ; 0 where there are too few pixels. */
    private double error() {
        double mean = 0;
        double squares = 0;
        for (int q = 0; q < QUARTERS; q++) {
            if (weights[q] == 0) {
                return 0;
            }
            double lightness = Paper.lightness(conditions.paper().reflectance(roots[q] / weights[q]));
            mean += lightness / QUARTERS;
            squares += lightness * lightness / QUARTERS;
        }
        return Math.sqrt(Math.max(0, squares - mean * mean) / (QUARTERS - 1));
    }
}
