package greyground.app.recipe;

import greyground.app.kept.CacheFolder;
import greyground.app.kept.FigureStore;
import greyground.app.kept.GrainStore;
import greyground.app.kept.NeighbourhoodStore;
import greyground.app.kept.ResponseStore;
import greyground.film.compose.GrainPatches;
import greyground.film.job.Job;
import greyground.film.job.ReadingSide;
import greyground.grain.AquatintScreen;
import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.picture.CopperRelief;
import greyground.plan.BenchConditions;
import greyground.plan.CopperLoss;
import greyground.plan.ExposureTimes;
import greyground.plate.Bath;
import greyground.plate.Film;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.Ink;
import greyground.plate.PlateBlur;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import greyground.plate.neighbourhood.NeighbourhoodSample;
import greyground.quantity.FilmPixels;
import greyground.tone.ToneCurve;
import greyground.tone.UsableCoverage;
import greyground.workshop.PlateMaking;
import greyground.workshop.Workshop;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The virtual plate of one job in one workshop: which films lie on it, how it is exposed and bitten, and the tones that set
 * the job's curve.
 *
 * @param grain the positive's; empty for continuous tone
 * @param screens the separate screen film at each share of black; empty where the process has none
 */
public record JobPlate(Workshop workshop, Job job, Optional<ThresholdTile> grain, Optional<GrainPatches> screens) {
    /** A dot's spacing is this many of the plate's pixels, so that finer grains are computed more finely. */
    private static final double PIXELS_PER_SPACING = 40;

    /** Grains of a sprayed ground touch and overlap, so their own width takes a tenth as many pixels. */
    private static final double GRAINS_OF_GROUND = 4;

    private static final double FINEST_MICROMETRES = 2.2;
    private static final double COARSEST_MICROMETRES = 9;

    /** Looks up or makes the grain of every film that the job needs. */
    public static JobPlate of(Workshop workshop, Job job) {
        Optional<GrainPatches> screens = Optional.empty();
        if (job.process() instanceof PlateProcess.Photogravure process) {
            AquatintScreen aquatint = GrainStore.screen(process, job.resolution());
            Grain grain = new Grain.Stochastic(process.screenSpacingMicrometres(), GrainStore.SCREEN_SEED);
            screens = Optional.of(GrainPatches.of(grain, aquatint.tile(), pixels(workshop, job)));
        }
        return new JobPlate(workshop, job, GrainStore.positive(job), screens);
    }

    /** Light, resist, bath, wipe, ink and paper, bitten as planned. */
    public PlateConditions conditions() {
        return conditions(workshop.usualDepthMicrometres());
    }

    public PlateConditions conditions(double depthMicrometres) {
        return conditions(workshop, job, depthMicrometres);
    }

    /** The conditions of a job's plate, for which no grain need be made. */
    public static PlateConditions conditions(Workshop workshop, Job job, double depthMicrometres) {
        boolean inkDown = job.placing().readingSide().inkSide() == ReadingSide.InkSide.DOWN;
        return BenchConditions.ofDepth(workshop, job.process(), depthMicrometres, inkDown);
    }

    private static FilmPixels pixels(Workshop workshop, Job job) {
        return workshop.filmPrinter().pixels(job.resolution());
    }

    public VirtualPlate plate() {
        return plate(conditions());
    }

    /** The plate under other conditions, with the job's films. */
    public VirtualPlate plate(PlateConditions conditions) {
        return plate(conditions, widestPixelMicrometres());
    }

    public VirtualPlate plate(PlateConditions conditions, double widestPixelMicrometres) {
        return new VirtualPlate(conditions, screenPatch(), widestPixelMicrometres);
    }

    public FilmPatches patches() {
        return grain.<FilmPatches>map(tile -> GrainPatches.of(job.grain(), tile, pixels(workshop, job)))
                .orElseGet(() -> FilmPatches.continuous(BenchConditions.film(workshop)));
    }

    /** How its tones print as planned: measured or predicted. */
    public JobTones tones() {
        return JobTones.of(response(), workshop.responses(), making(workshop, job));
    }

    /** How the shop makes a job's plate. */
    public static PlateMaking making(Workshop workshop, Job job) {
        boolean bitten = !(job.process() instanceof PlateProcess.UnetchedFilm);
        double found = workshop.exposure().screenSeconds().value()
                + workshop.exposure().imageSeconds().value();
        // A wedge held too high or low asks for another dose; lamp and film base are made up for and leave the dose
        // alone.
        double exposure = found * ExposureTimes.of(workshop).stepFactor();
        return new PlateMaking(
                job.process(),
                job.grain(),
                job.resolution(),
                job.placing().readingSide().inkSide() == ReadingSide.InkSide.DOWN,
                bitten ? workshop.bath().biteMinutes().value() : 0,
                exposure);
    }

    /**
     * What the bath takes of the plate.
     *
     * @param predicted as planned
     * @param plateByCoverage share of the plate that has each film coverage; the rest is clear film
     */
    public CopperLoss loss(VirtualResponse predicted, Map<Double, Double> plateByCoverage) {
        return conditions().wells() instanceof Bath bath
                ? CopperLoss.of(predicted.levels(), bath.depthMicrometres(), plateByCoverage)
                : CopperLoss.NONE;
    }

    /** The response predicted as planned, kept from an earlier film or computed now. */
    public VirtualResponse response() {
        return response(conditions());
    }

    /** The response predicted under other conditions. */
    public VirtualResponse response(PlateConditions conditions) {
        return new ResponseStore(CacheFolder.usual()).response(plate(conditions), patches());
    }

    /**
     * By how many micrometres the plate blurs fine detail, as a Gaussian's standard deviation; kept from an earlier film or computed now.
     *
     * @param usable tones, about the middle of which it is measured
     */
    public double blurMicrometres(UsableCoverage usable) {
        PlateConditions conditions = conditions();
        if (screens.isPresent() && job.process() instanceof PlateProcess.Photogravure process) {
            FilmPatch screen = screens.get().across(PlateBlur.SPACINGS, share -> process.screenBlack());
            VirtualPlate plate = new VirtualPlate(conditions, screen, widestPixelMicrometres());
            FilmPatches tones = FilmPatches.continuous(BenchConditions.film(workshop));
            return blur(plate, tones.name(), coverage -> continuous(screen, coverage), usable);
        }
        GrainPatches dots = GrainPatches.of(job.grain(), grain.orElseThrow(), pixels(workshop, job));
        return blur(plate(conditions), dots.name(), coverage -> dots.across(PlateBlur.SPACINGS, coverage), usable);
    }

    private double blur(
            VirtualPlate plate, String film, Function<DoubleUnaryOperator, FilmPatch> positive, UsableCoverage usable) {
        return new FigureStore(CacheFolder.usual())
                .blur(
                        plate,
                        film + " within " + usable,
                        () -> PlateBlur.micrometres(plate, positive, usable, spacingMicrometres(job)));
    }

    /** Continuous tone of a screen's size. */
    private FilmPatch continuous(FilmPatch screen, DoubleUnaryOperator coverage) {
        Film film = BenchConditions.film(workshop);
        float[] densities = new float[screen.width() * screen.height()];
        for (int i = 0; i < densities.length; i++) {
            double share = coverage.applyAsDouble((i % screen.width() + 0.5) / screen.width());
            densities[i] = (float) (film.clearDensity() + share * (film.blackDensity() - film.clearDensity()));
        }
        return FilmPatch.densities(
                        screen.width(), screen.height(), screen.pitchMicrometres(), screen.rim(), 0, 0, densities)
                .tapered(0);
    }

    /**
     * What neighbourhoods of the positive's bits print under other conditions, kept from an earlier proof or computed now.
     *
     * @param inks in which they print, one or more, the blackest first; they differ from the conditions' own in their densities alone
     */
    public NeighbourhoodSample neighbourhoods(PlateConditions conditions, List<Ink> inks) {
        return new NeighbourhoodStore(CacheFolder.usual())
                .sample(plate(conditions), inks, patches(), CopperRelief::fromCorners);
    }

    /** Widest pixel on which the job's plate is computed. */
    public double widestPixelMicrometres() {
        double spacing = spacingMicrometres(job);
        if (job.process() instanceof PlateProcess.SprayedAquatint ground) {
            spacing = Math.min(spacing, GRAINS_OF_GROUND * ground.grainMicrometres());
        }
        return spacing == 0
                ? COARSEST_MICROMETRES
                : Math.max(FINEST_MICROMETRES, Math.min(COARSEST_MICROMETRES, spacing / PIXELS_PER_SPACING));
    }

    /** Mean distance of the dots that a job's tones stand in: its grain's, or its screen film's; 0 where there are none. */
    public static double spacingMicrometres(Job job) {
        return job.process() instanceof PlateProcess.Photogravure process
                ? process.screenSpacingMicrometres()
                : GrainPatches.spacingMicrometres(job.grain());
    }

    private @Nullable FilmPatch screenPatch() {
        return screens.isPresent() && job.process() instanceof PlateProcess.Photogravure process
                ? screens.get().at(Math.rint(process.screenBlack() * ToneCurve.SOLID) / ToneCurve.SOLID)
                : null;
    }
}
