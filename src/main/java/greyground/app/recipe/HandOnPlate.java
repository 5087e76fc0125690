package greyground.app.recipe;

import greyground.art.burnish.LocalTones;
import greyground.art.burnish.LocalTouch;
import greyground.art.touch.Crispness;
import greyground.art.touch.LocalContrast;
import greyground.film.job.ArtScale;
import greyground.film.job.Hand;
import greyground.film.job.Job;
import greyground.plate.inspect.FilmLimits;
import greyground.quantity.Refusal;
import greyground.raster.Crew;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ArtRange;
import greyground.tone.ToneCurve;
import greyground.tone.UsableCoverage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a job's hand comes to in pixels of its art as that lies on the plate. */
final class HandOnPlate {
    private static final double MICROMETRES_PER_MILLIMETRE = 1000;

    /** Spacings of the detail whose contrast 'plate' gives back (assumed). */
    private static final double SPACINGS = 2;

    /** A finer Gaussian would sharpen within one dot, and one finer than the plate blurs gives nothing back (assumed). */
    private static final double RADII_IN_SPACING = 4;

    private static final UsableCoverage EVERY_TONE = new UsableCoverage(0, 1);

    private HandOnPlate() {}

    /** The turned art after all that the hand does to its pixels; the same where it does nothing. */
    static GreyPlane touched(
            ArtSource art,
            Job job,
            GreyPlane turned,
            ArtRange range,
            Optional<Crispness> crispness,
            Optional<LineOnPlate> line,
            Progress progress)
            throws IOException {
        double contrast = line.isPresent() ? 0 : job.art().hand().localContrast();
        List<ArtSource.Touching> touches = new ArrayList<>();
        ArtScale lies = lies(job, turned);
        double pitch = pixelMicrometres(lies);
        if (contrast != 0) {
            touches.add(plane -> LocalContrast.of(plane, contrast, pitch, range, Crew.allCores(), Progress.NONE));
        }
        Optional<LocalTones> local = localTones(job, turned, range);
        local.ifPresent(tones -> touches.add(plane -> tones));
        Optional<Crispness> fine = crispness.filter(crisp -> !crisp.tooCoarse());
        fine.ifPresent(crisp -> touches.add(plane -> crisp));
        line.flatMap(LineOnPlate::specks).ifPresent(specks -> touches.add(plane -> specks));
        return touches.isEmpty()
                ? turned
                : art.touched(
                        job.art(),
                        List.of(
                                contrast,
                                pitch,
                                range,
                                fine,
                                job.art().hand().retouching().touches(),
                                lies,
                                line.map(LineOnPlate::digest)),
                        touches,
                        progress);
    }

    /** Places burnished and deepened, on the art's pixels; empty where there are none. */
    private static Optional<LocalTones> localTones(Job job, GreyPlane turned, ArtRange range) {
        List<LocalTouch> touches = job.art().hand().retouching().touches();
        return touches.isEmpty() ? Optional.empty() : Optional.of(new LocalTones(touches, lie(job, turned), range));
    }

    /** How the art's pixels lie on the plate. */
    static LocalTones.Lie lie(Job job, GreyPlane turned) {
        ArtScale lies = lies(job, turned);
        return new LocalTones.Lie(
                job.plate().widthMillimetres() / 2 - lies.middleX() * lies.across(),
                job.plate().heightMillimetres() / 2 - lies.middleY() * lies.down(),
                lies.across(),
                lies.down());
    }

    /** Width of a pixel of the turned art on the plate. */
    static double pixelMicrometres(Job job, GreyPlane turned) {
        return pixelMicrometres(lies(job, turned));
    }

    private static double pixelMicrometres(ArtScale lies) {
        return MICROMETRES_PER_MILLIMETRE * Math.sqrt(lies.across() * lies.down());
    }

    private static ArtScale lies(Job job, GreyPlane turned) {
        return ArtScale.of(
                turned.width(),
                turned.height(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                new ArtScale.Plate(job.plate().widthMillimetres(), job.plate().heightMillimetres(), 1, 1));
    }

    /**
     * The crispness that a job asks for; empty where it asks for none.
     *
     * @param plate asked for its blur where no amount is given
     * @param usable tones of that plate
     */
    static Optional<Crispness> crispness(
            JobPlate plate, UsableCoverage usable, GreyPlane turned, ArtRange range, ToneCurve curve) {
        Job job = plate.job();
        Hand hand = job.art().hand();
        if (hand.crispness().equals(Optional.of(0.0))) {
            return Optional.empty();
        }
        double spacing = JobPlate.spacingMicrometres(job);
        double blur = hand.crispness().isPresent() ? 0 : plate.blurMicrometres(usable);
        double radius = hand.crispRadius().orElseGet(() -> Math.max(spacing / RADII_IN_SPACING, blur));
        double amount = hand.crispness()
                .orElseGet(() -> Math.min(Hand.CRISPNESS.most(), Crispness.amountFor(spacing, blur, radius, SPACINGS)));
        ArtScale lies = lies(job, turned);
        return Optional.of(new Crispness(
                amount,
                radius,
                MICROMETRES_PER_MILLIMETRE * lies.across(),
                MICROMETRES_PER_MILLIMETRE * lies.down(),
                range,
                curve,
                spacing,
                held(plate, spacing)));
    }

    /** Coverages whose round dots and, towards black, round lands are as wide as the plate holds, one to a square of the spacing. */
    private static UsableCoverage held(JobPlate plate, double spacing) {
        if (plate.grain().isEmpty()) {
            return EVERY_TONE;
        }
        FilmLimits limits = FilmLimits.of(plate.conditions());
        double least = disc(limits.leastOpeningMicrometres() / spacing);
        double most = 1 - disc(limits.leastLandMicrometres() / spacing);
        return least < most ? new UsableCoverage(least, most) : EVERY_TONE;
    }

    private static double disc(double width) {
        return Math.PI / 4 * width * width;
    }

    /** What its crispness came to, in a line; empty where the job asks for none. */
    static Optional<String> words(FilmRecipe recipe) {
        return recipe.crispness().map(crispness -> {
            double pixel = Math.max(crispness.acrossMicrometres(), crispness.downMicrometres());
            String of = Refusal.plain(Math.rint(1000 * crispness.amount()) / 10) + " % of detail about "
                    + Refusal.plain(Math.rint(crispness.radiusMicrometres())) + " \u00b5m";
            return crispness.tooCoarse()
                    ? of + " changes nothing, since a pixel of the art is "
                            + Refusal.plain(Math.rint(pixel))
                            + " \u00b5m wide on the plate: scan it finer, or choose a larger --crisp-radius"
                    : of + ", where neither noise, range nor grain forbids it";
        });
    }
}
