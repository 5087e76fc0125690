package greyground.plate;

/**
 * How much of a patch's print carries how thick a film of ink, plate tone aside. What ink, paper and plate tone make of it is then
 * a short sum, so that these can be varied without computing the plate again.
 *
 * <p>Films are sorted into classes of 0.05 um, each film shared between the two classes it lies between. For m up to 0.3 per um a
 * tone is within 0.01 L* of the pixel-by-pixel mean (tested).
 */
public final class InkOnPaper {
    private static final double MICROMETRES_PER_CLASS = 0.05;
    private static final int QUARTERS = 4;

    private final double[][] quarters;
    private final double[] whole;
    private final double area;

    private InkOnPaper(double[][] quarters) {
        this.quarters = quarters;
        this.whole = new double[quarters[0].length];
        double sum = 0;
        for (double[] quarter : quarters) {
            for (int i = 0; i < whole.length; i++) {
                whole[i] += quarter[i];
                sum += quarter[i];
            }
        }
        this.area = sum;
    }

    /**
     * Sorts a print's films.
     *
     * @param states of a plate without plate tone
     * @param base the film whose weights count
     */
    static InkOnPaper of(PlateStates states, FilmPatch base) {
        int width = states.grid().width();
        int height = states.grid().height();
        double[] across = base.weightsAcross(width);
        double[] down = base.weightsDown(height);
        float thickest = 0;
        for (float film : states.printMicrometres()) {
            thickest = Math.max(thickest, film);
        }
        double[][] quarters = new double[QUARTERS][(int) (thickest / MICROMETRES_PER_CLASS) + 2];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double at = states.printMicrometres()[y * width + x] / MICROMETRES_PER_CLASS;
                int below = (int) at;
                double[] quarter = quarters[(x * 2 >= width ? 1 : 0) + (y * 2 >= height ? 2 : 0)];
                double weight = across[x] * down[y];
                quarter[below] += weight * (below + 1 - at);
                quarter[below + 1] += weight * (at - below);
            }
        }
        return new InkOnPaper(quarters);
    }

    /** Classes that {@link #lightness} will ask {@link #roots} for. */
    public int classes() {
        return whole.length;
    }

    /**
     * R^(1/n) of each class of films.
     *
     * @param classes as many as the patch with most of them has
     * @param ink of which only density counts; how it transfers and spreads is in the films already
     * @param toneOnPaperMicrometres plate tone as it lies on the paper
     */
    public static double[] roots(int classes, Ink ink, Paper paper, double toneOnPaperMicrometres) {
        double[] roots = new double[classes];
        for (int i = 0; i < classes; i++) {
            roots[i] = paper.root(ink.density(i * MICROMETRES_PER_CLASS + toneOnPaperMicrometres));
        }
        return roots;
    }

    /**
     * Lightness of the print.
     *
     * @param roots of the same paper
     * @return absolute CIE L*
     */
    public double lightness(double[] roots, Paper paper) {
        return Paper.lightness(paper.reflectance(sum(whole, roots) / area));
    }

    /** Standard error of that lightness from how the patch's four quarters differ, as {@link ToneTerms#lightnessError}. */
    public double lightnessError(double[] roots, Paper paper) {
        double mean = 0;
        double squares = 0;
        for (double[] quarter : quarters) {
            double weight = 0;
            for (double one : quarter) {
                weight += one;
            }
            if (weight == 0) {
                return 0;
            }
            double lightness = Paper.lightness(paper.reflectance(sum(quarter, roots) / weight));
            mean += lightness / QUARTERS;
            squares += lightness * lightness / QUARTERS;
        }
        return Math.sqrt(Math.max(0, squares - mean * mean) / (QUARTERS - 1));
    }

    private static double sum(double[] shares, double[] roots) {
        double sum = 0;
        for (int i = 0; i < shares.length; i++) {
            sum += shares[i] * roots[i];
        }
        return sum;
    }
}
