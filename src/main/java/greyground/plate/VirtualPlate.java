package greyground.plate;

import greyground.quantity.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * Takes a patch of film through light, resist, ground, bath, wipe, ink and paper. A pure function of its conditions and the
 * film; safe for many threads at once.
 */
public final class VirtualPlate {
    /** Widest pixel that keeps lightness within a unit of one half as wide, as the tests hold. */
    private static final double WIDEST_PIXEL_MICROMETRES = 4.5;

    private static final int QUARTERS = 4;

    private final PlateConditions conditions;
    private final @Nullable FilmPatch screen;
    private final double widestPixelMicrometres;

    /** A plate without a screen film. */
    public VirtualPlate(PlateConditions conditions) {
        this(conditions, null, WIDEST_PIXEL_MICROMETRES);
    }

    /** A plate of photogravure. The screen's patch has the size of the positive's, unless that is uniform. */
    public VirtualPlate(PlateConditions conditions, FilmPatch screen) {
        this(conditions, screen, WIDEST_PIXEL_MICROMETRES);
    }

    /**
     * A plate computed as finely as is wished.
     *
     * @param widestPixelMicrometres film pixels are split until they are no wider, 0.05 to 1000
     */
    public VirtualPlate(PlateConditions conditions, @Nullable FilmPatch screen, double widestPixelMicrometres) {
        Refusal.checkRange("pixel of the virtual plate", widestPixelMicrometres, 0.05, 1000, "um", "about 4.5 um");
        this.conditions = conditions;
        this.screen = screen;
        this.widestPixelMicrometres = widestPixelMicrometres;
    }

    /** What decides the plate. */
    public PlateConditions conditions() {
        return conditions;
    }

    /** Names all that decides a result of this plate but the positive, with {@code more} for that; see {@link PlateConditions#digest}. */
    String digest(String more) {
        String screenBytes = screen == null ? "no screen" : screen.digest();
        return conditions.digest(screenBytes + "\n" + widestPixelMicrometres + "\n" + more);
    }

    /** The plate at every stage. */
    public PlateStates states(FilmPatch positive) {
        Grid grid = grid(positive);
        FilmPatch placed = positive.isUniform() && screen != null ? screen : positive;
        Film film = pictureExposure().film();
        float[] transmission = ExposureSum.transmission(positive, film, grid);
        float[] dose = ExposureSum.dose(conditions.exposures(), positive, screen, grid, film, transmission);
        Resist resist = conditions.resist();
        boolean[] hard = resist.developed(dose, grid);
        boolean[] covered = hard;
        float[] depth;
        if (conditions.wells() instanceof Bath bath) {
            SprayedGround ground = conditions.ground();
            if (ground != null) {
                covered = ground.grains(grid, placed.leftMicrometres(), placed.topMicrometres());
                for (int i = 0; i < covered.length; i++) {
                    covered[i] |= hard[i];
                }
            }
            double farthest = bath.undercutMicrometres() + resist.leastHoldMicrometres() + grid.pitchMicrometres();
            float[] beyond =
                    EdgeDistance.micrometres(covered, false, dose, resist.throughCureDoseRatio(), grid, farthest);
            depth = bath.depth(beyond, resist.leastHoldMicrometres(), grid);
        } else {
            depth = FilmRelief.depth(dose, hard, resist);
        }
        float[] ink = conditions.wipe().ink(depth, grid);
        float[] print = conditions.ink().onPaper(ink, grid);
        float tone = (float) conditions.wipe().plateToneMicrometres();
        for (int i = 0; i < ink.length; i++) {
            ink[i] += tone;
            print[i] += (float) (tone * conditions.ink().transferFraction());
        }
        return new PlateStates(grid, transmission, dose, hard, covered, depth, ink, print);
    }

    /**
     * Reflectance of the print at each pixel, 0 to 1, before light spreads in the paper.
     *
     * @param states of this plate
     */
    public float[] reflectance(PlateStates states) {
        Paper unspread = new Paper(conditions.paper().density(), 1);
        float[] reflectance = new float[states.grid().area()];
        for (int i = 0; i < reflectance.length; i++) {
            reflectance[i] = (float) unspread.root(conditions.ink().density(states.printMicrometres()[i]));
        }
        return reflectance;
    }

    /**
     * Explains one tone.
     *
     * @param coverage to report beside the terms; the patch alone decides them
     */
    public ToneTerms terms(double coverage, FilmPatch positive) {
        FilmPatch base = base(positive);
        PlateStates states = states(positive);
        int margin = (int) Math.round(
                base.marginPixels() * base.pitchMicrometres() / states.grid().pitchMicrometres());
        return terms(coverage, states, margin);
    }

    private ToneTerms terms(double coverage, PlateStates states, int margin) {
        Grid grid = states.grid();
        int width = grid.width();
        int height = grid.height();
        double threshold = conditions.resist().throughCureDoseRatio();
        float tone = (float) conditions.wipe().plateToneMicrometres();
        double toneOnPaper = tone * conditions.ink().transferFraction();
        int soft = 0;
        int open = 0;
        int land = 0;
        int printed = 0;
        double depth = 0;
        double ink = 0;
        double film = 0;
        RootTable table = new RootTable(conditions.ink(), conditions.paper(), states.printMicrometres());
        double[] roots = new double[QUARTERS];
        int[] counts = new int[QUARTERS];
        for (int y = margin; y < height - margin; y++) {
            for (int x = margin; x < width - margin; x++) {
                int i = y * width + x;
                soft += states.dose()[i] < threshold ? 1 : 0;
                open += states.covered()[i] ? 0 : 1;
                land += states.depthMicrometres()[i] == 0 ? 1 : 0;
                depth += states.depthMicrometres()[i];
                ink += states.inkMicrometres()[i] - tone;
                double beyondTone = states.printMicrometres()[i] - toneOnPaper;
                if (beyondTone > 1e-4) {
                    printed++;
                    film += states.printMicrometres()[i];
                }
                int quarter = (x * 2 >= width ? 1 : 0) + (y * 2 >= height ? 2 : 0);
                roots[quarter] += table.root(states.printMicrometres()[i]);
                counts[quarter]++;
            }
        }
        int area = (width - 2 * margin) * (height - 2 * margin);
        double rootSum = 0;
        for (double quarter : roots) {
            rootSum += quarter;
        }
        double reflectance = conditions.paper().reflectance(rootSum / area);
        double meanFilm = printed == 0 ? 0 : film / printed;
        return new ToneTerms(
                coverage,
                (double) soft / area,
                (double) open / area,
                (double) land / area,
                depth / area,
                ink / area,
                depth == 0 ? 0 : ink / depth,
                (double) printed / area,
                meanFilm,
                conditions.paper().density() + conditions.ink().density(meanFilm),
                -Math.log10(reflectance),
                Paper.lightness(reflectance),
                error(roots, counts));
    }

    /** Standard error of the mean lightness from how the patch's four quarters differ; 0 where there are too few pixels. */
    private double error(double[] roots, int[] counts) {
        double mean = 0;
        double squares = 0;
        for (int q = 0; q < QUARTERS; q++) {
            if (counts[q] == 0) {
                return 0;
            }
            double lightness = Paper.lightness(conditions.paper().reflectance(roots[q] / counts[q]));
            mean += lightness / QUARTERS;
            squares += lightness * lightness / QUARTERS;
        }
        return Math.sqrt(Math.max(0, squares - mean * mean) / (QUARTERS - 1));
    }

    private Exposure pictureExposure() {
        return conditions.exposures().stream()
                .filter(exposure -> exposure.sheet() == Exposure.Sheet.POSITIVE)
                .findFirst()
                .orElseThrow(() -> Refusal.use("no exposure goes through the positive; give the image exposure"));
    }

    private Grid grid(FilmPatch positive) {
        FilmPatch base = base(positive);
        int split = (int) Math.ceil(base.pitchMicrometres() / widestPixelMicrometres - 1e-9);
        return new Grid(base.width() * split, base.height() * split, base.pitchMicrometres() / split, base.rim());
    }

    /** The finer of the two films, whose pixels the grid divides. */
    private FilmPatch base(FilmPatch positive) {
        FilmPatch base = positive;
        if (screen != null) {
            if (!positive.isUniform()) {
                checkSameSize(positive, screen);
            }
            if (positive.isUniform() || screen.pitchMicrometres() < positive.pitchMicrometres()) {
                base = screen;
            }
        }
        return base;
    }

    private static void checkSameSize(FilmPatch positive, FilmPatch screen) {
        double across = positive.width() * positive.pitchMicrometres() - screen.width() * screen.pitchMicrometres();
        double down = positive.height() * positive.pitchMicrometres() - screen.height() * screen.pitchMicrometres();
        double allowed = Math.max(positive.pitchMicrometres(), screen.pitchMicrometres()) / 2;
        if (Math.abs(across) > allowed || Math.abs(down) > allowed) {
            throw Refusal.use("the screen's patch differs from the positive's by " + Refusal.plain(across) + " x "
                    + Refusal.plain(down) + " um; they must agree within " + Refusal.plain(allowed)
                    + " um: cut both to one size");
        }
    }
}
