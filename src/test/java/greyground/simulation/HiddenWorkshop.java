package greyground.simulation;

import greyground.app.recipe.JobPlate;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.film.job.ReadingSide;
import greyground.fit.MeasuredDepth;
import greyground.grain.Grain;
import greyground.plan.BenchConditions;
import greyground.plate.Bath;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.quantity.Resolution;
import greyground.quantity.Size;
import greyground.tone.RangeMapping;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * An invented workshop that believes it is the assumed one and secretly is not.
 *
 * @param believed nobody has measured it
 * @param secret its true numbers
 * @param depthMicrometres true depth of its bite, which differs from what rate and minutes predict
 * @param gauge what a depth gauge says of that
 */
public record HiddenWorkshop(Workshop believed, Workshop secret, double depthMicrometres, MeasuredDepth gauge) {
    private static final double GAUGE_ERROR = 1.2;

    /** Least and greatest of each number that is hidden; those with a third entry are spread evenly by their logarithm. */
    private static final Map<String, double[]> HIDDEN = hidden();

    private static Map<String, double[]> hidden() {
        Map<String, double[]> ranges = new LinkedHashMap<>();
        ranges.put("filmPrinter.spotGrowthMicrometres", new double[] {-3, 11});
        ranges.put("bath.etchFactor", new double[] {1.35, 3, 1});
        ranges.put("wipe.padRadiusMillimetres", new double[] {0.6, 3.7, 1});
        ranges.put("wipe.plateToneMicrometres", new double[] {0, 0.4});
        ranges.put("ink.saturationDensity", new double[] {1.4, 1.95});
        ranges.put("ink.strengthPerMicrometre", new double[] {0.09, 0.27, 1});
        ranges.put("ink.yuleNielsenFactor", new double[] {1.25, 2.2});
        return ranges;
    }

    /** One of many: the same seed gives the same shop. */
    public static HiddenWorkshop of(long seed) {
        Random random = new Random(seed * 1_000_003 + 17);
        Workshop believed = Workshop.assumed();
        Workshop secret = believed;
        for (Map.Entry<String, double[]> one : HIDDEN.entrySet()) {
            double[] range = one.getValue();
            double share = random.nextDouble();
            double value = range.length > 2
                    ? range[0] * Math.pow(range[1] / range[0], share)
                    : range[0] + (range[1] - range[0]) * share;
            secret = secret.with(one.getKey(), Figure.assumed(value, "invented"));
        }
        // In steps, so that shops of equal paper share what they predict.
        secret = secret.with("paper.whiteDensity", Figure.assumed(0.04 + 0.02 * random.nextInt(4), "invented"));
        double depth = 28 + 18 * random.nextDouble();
        MeasuredDepth gauge = new MeasuredDepth(depth + GAUGE_ERROR * random.nextGaussian(), GAUGE_ERROR);
        // The paper is measured before anything else: a test plate tells only what is darker than it.
        believed = believed.with("paper.whiteDensity", secret.paper().whiteDensity());
        return new HiddenWorkshop(believed, secret, depth, gauge);
    }

    /** How its plates are really made. */
    public PlateConditions truth() {
        return BenchConditions.ofDepth(secret, new PlateProcess.EtchedFilm(), depthMicrometres, true);
    }

    /** How a plate of another job is really made. */
    PlateConditions truth(Job job) {
        boolean inkDown = job.placing().readingSide().inkSide() == ReadingSide.InkSide.DOWN;
        return BenchConditions.ofDepth(secret, job.process(), depthMicrometres, inkDown);
    }

    /** How it believes that they are made, at the depth it believes in. */
    public PlateConditions belief() {
        return BenchConditions.ofDepth(believed, new PlateProcess.EtchedFilm(), believed.usualDepthMicrometres(), true);
    }

    /** The same at the depth that was measured. */
    public PlateConditions beliefAsBitten() {
        double factor = believed.bath().etchFactor().value();
        return belief().withWells(new Bath(gauge.micrometres(), factor));
    }

    /** A job of this shop, on a plate of that grain. */
    public static Job job(Grain grain, double dotsPerInch) {
        return new Job(
                "",
                "",
                new Size(60, 80),
                new PlateProcess.EtchedFilm(),
                new Resolution(dotsPerInch),
                grain,
                ArtChoice.WHOLE,
                Placing.USUAL,
                RangeMapping.DEFAULT,
                false,
                Optional.of(0.0),
                List.of());
    }

    /** The films of such a job, for virtual plates of any conditions. */
    public JobPlate plate(Grain grain, double dotsPerInch) {
        return JobPlate.of(believed, job(grain, dotsPerInch));
    }
}
