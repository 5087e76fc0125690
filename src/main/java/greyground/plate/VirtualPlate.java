package greyground.plate;

import greyground.plate.edge.DoseEdge;
import greyground.plate.edge.EdgeDistance;
import greyground.plate.edge.Grid;
import greyground.quantity.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * Takes a patch of film through light, resist, ground, bath, wipe, ink and paper. A pure function of its conditions and the
 * film; safe for many threads at once.
 */
public final class VirtualPlate {
    /** Widest pixel that keeps lightness within a unit of one half as wide, as the tests hold. */
    private static final double WIDEST_PIXEL_MICROMETRES = 4.5;

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
        Refusal.checkRange("pixel of the virtual plate", widestPixelMicrometres, 0.05, 1000, "µm", "about 4.5 µm");
        this.conditions = conditions;
        this.screen = screen;
        this.widestPixelMicrometres = widestPixelMicrometres;
    }

    /** What decides the plate. */
    public PlateConditions conditions() {
        return conditions;
    }

    /** Widest pixel that it is computed on. */
    public double widestPixelMicrometres() {
        return widestPixelMicrometres;
    }

    /** Names all that decides a result of this plate but the positive, with {@code more} for that; see {@link PlateConditions#digest}. */
    public String digest(String more) {
        String screenBytes = screen == null ? "no screen" : screen.digest();
        return conditions.digest(screenBytes + "\n" + widestPixelMicrometres + "\n" + more);
    }

    /** The plate at every stage. */
    public PlateStates states(FilmPatch positive) {
        return states(
                positive, ExposureSum.transmission(positive, pictureExposure().film(), grid(positive)));
    }

    /** The film's own look: grid and transmission; every plane of what comes after it is empty. */
    public PlateStates filmAlone(FilmPatch positive) {
        Grid grid = grid(positive);
        float[] none = new float[0];
        return new PlateStates(
                grid,
                ExposureSum.transmission(positive, pictureExposure().film(), grid),
                none,
                new boolean[0],
                new boolean[0],
                none,
                none,
                none);
    }

    /** The plate at every stage but the film, for whoever has no use for that. */
    public PlateStates statesBeyondFilm(FilmPatch positive) {
        return states(positive, new float[0]);
    }

    /** A plate of these conditions with all of its wells full to the plate's face, as if the pad reached nowhere down. */
    public PlateStates unwiped(PlateStates wiped) {
        return inked(wiped, wiped.depthMicrometres().clone());
    }

    private PlateStates states(FilmPatch positive, float[] transmission) {
        Grid grid = grid(positive);
        FilmPatch placed = positive.isUniform() && screen != null ? screen : positive;
        float[] dose = ExposureSum.dose(conditions.exposures(), positive, screen, grid);
        Resist resist = conditions.resist();
        DoseEdge edge = new DoseEdge(dose, resist.throughCureDoseRatio());
        boolean[] hard = resist.developed(edge, grid);
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
            float[] beyond = EdgeDistance.micrometres(covered, false, edge, grid, farthest);
            depth = bath.depth(beyond, resist.leastHoldMicrometres(), grid);
        } else {
            depth = FilmRelief.depth(dose, hard, resist);
        }
        float[] none = new float[0];
        PlateStates bitten = new PlateStates(grid, transmission, dose, hard, covered, depth, none, none);
        return inked(bitten, conditions.wipe().ink(depth, grid));
    }

    /** The plate with so much ink in its wells, and its print. */
    private PlateStates inked(PlateStates plate, float[] ink) {
        float[] print = conditions.ink().onPaper(ink, plate.grid());
        float tone = (float) conditions.wipe().plateToneMicrometres();
        for (int i = 0; i < ink.length; i++) {
            ink[i] += tone;
            print[i] += (float) (tone * conditions.ink().transferFraction());
        }
        return new PlateStates(
                plate.grid(),
                plate.transmission(),
                plate.dose(),
                plate.resist(),
                plate.covered(),
                plate.depthMicrometres(),
                ink,
                print);
    }

    /**
     * Explains one tone.
     *
     * @param coverage to report beside the terms; the patch alone decides them
     */
    public ToneTerms terms(double coverage, FilmPatch positive) {
        return ToneMeasure.of(conditions, coverage, states(positive, new float[0]), base(positive));
    }

    /** How much of a patch's print carries how thick a film of ink, plate tone aside. */
    public InkOnPaper inkOnPaper(FilmPatch positive) {
        PlateConditions clean = conditions.withWipe(conditions.wipe().withPlateTone(0));
        VirtualPlate plate = new VirtualPlate(clean, screen, widestPixelMicrometres);
        return InkOnPaper.of(plate.statesBeyondFilm(positive), base(positive));
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
                    + Refusal.plain(down) + " µm; they must agree within " + Refusal.plain(allowed)
                    + " µm: cut both to one size");
        }
    }
}
