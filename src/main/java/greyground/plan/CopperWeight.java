package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.micrometres;

import greyground.plan.ExposurePlan.Step;
import greyground.quantity.Range;
import greyground.quantity.Unit;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.OptionalDouble;

/**
 * What a scale says of a bitten plate, beside what was computed for it. One weight can't tell a deeper bite from wider undercut, nor
 * either from a bared edge, so that nothing is learnt from it but the copper in the bath.
 *
 * @param grams that the plate lost, bare and dry before and after
 * @param meanDepthMicrometres over the whole plate, by that weight
 * @param depthMicrometres measured, or expected of the workshop's usual bite
 * @param depthMeasured whether it was measured
 * @param computedGrams for that depth
 * @param depthForWeight at which the computed plate would have lost so much; infinity where it bares no copper
 * @param copperGramsPerLitre in the bath now
 */
public record CopperWeight(
        double grams,
        double meanDepthMicrometres,
        double depthMicrometres,
        boolean depthMeasured,
        double computedGrams,
        double depthForWeight,
        double copperGramsPerLitre) {
    /** What a plate may have lost. */
    public static final Range LOST =
            new Range(0.1, 5000, Unit.WEIGHT, "weigh the plate bare and dry, before lamination and after stripping");

    static final String TITLE = "Copper by weight";

    /** Two weighings on a scale of 0.1 g are good to about that (assumed). */
    private static final double SCALE_GRAMS = 0.1;

    private static final double TOO_LITTLE = 10 * SCALE_GRAMS;

    /** Ratios nearer to 1 than this say nothing (assumed: rate and etch factor are hardly known better). */
    private static final double ALIKE = 0.15;

    /**
     * Compares.
     *
     * @param workshop with the bath as it was before this plate
     * @param grams 0.1 to 5000, and no more than a plate a millimetre deep all over
     * @param depthMicrometres measured at a wide bar's edge, 0.1 to 1000, if it was
     */
    public static CopperWeight of(
            Workshop workshop, PlanRequest request, double grams, OptionalDouble depthMicrometres) {
        LOST.check("copper lost", grams);
        double area = request.plateSquareCentimetres();
        double mean = Bite.PROVED.check("mean depth by the plate's weight", CopperLoss.meanMicrometres(area, grams));
        Bite usual = Bite.of(workshop, request);
        double depth = depthMicrometres.isPresent()
                ? Bite.PROVED.check("measured depth", depthMicrometres.getAsDouble())
                : usual.depthAfter(CopperSteps.biteMinutes(workshop, usual));
        CopperLoss loss = request.loss();
        return new CopperWeight(
                grams,
                mean,
                depth,
                depthMicrometres.isPresent(),
                CopperLoss.grams(area, loss.takenAt(depth) * depth),
                loss.depthFor(mean),
                workshop.bath().copperGramsPerLitre().value()
                        + grams / workshop.bath().litres().value());
    }

    /** Weighed over computed. */
    public double ratio() {
        return grams / computedGrams;
    }

    /** To be read at the scale. */
    public Step step(Workshop workshop, PlanRequest request) {
        CopperSteps copper = new CopperSteps(workshop, request);
        Figure[] computed =
                copper.rateFrom(workshop.bath().biteMinutes(), workshop.bath().etchFactor());
        StepDraft step = new StepDraft(TITLE)
                .stated("the plate lost", fixed(grams, 1) + " g")
                .computed(
                        "mean depth by weight",
                        micrometres(meanDepthMicrometres),
                        "over the whole plate: grams / plate / 8.96 g/cm³");
        if (depthMeasured) {
            step.stated("depth measured", micrometres(depthMicrometres));
        } else {
            step.computed(
                    "depth expected",
                    micrometres(depthMicrometres),
                    "rate x time, slowing as copper dissolves",
                    computed);
        }
        step.computed(
                "copper computed for it",
                fixed(computedGrams, 1) + " g",
                "plate x depth x share taken x 8.96 g/cm³",
                computed);
        if (computedGrams > 0) {
            step.computed("weighed / computed", StepDraft.times(ratio()), "1 where the plate is as computed", computed);
        }
        step.computed(
                "copper in the bath now",
                StepDraft.perLitre(copperGramsPerLitre),
                "before + weighed / litres; the workshop's bath.copperGramsPerLitre for the next plate",
                workshop.bath().copperGramsPerLitre(),
                workshop.bath().litres());
        if (grams < TOO_LITTLE) {
            step.warn("A scale that shows tenths of a gram is unsure by a tenth of this weight or more.");
        }
        return step.advise(says()).done();
    }

    private String says() {
        if (computedGrams <= 0) {
            return "No copper was computed to lie bare on this plate, yet some is gone: look for pinholes and lifted resist.";
        }
        if (Math.abs(ratio() - 1) <= ALIKE) {
            return "As near as rate and undercut are known: the plate is as computed, as far as a weight can tell.";
        }
        String way = ratio() > 1 ? "more" : "less";
        if (depthMeasured) {
            return "The depth being measured, " + way + " copper is gone than it takes: the undercut is "
                    + (ratio() > 1 ? "wider" : "narrower") + ", or " + (ratio() > 1 ? "more" : "less")
                    + " lies bare than computed (bevel, back, pinholes, exposure). A weight can't say which: no etch factor is"
                    + " taken from it; a test plate's proof shows that.";
        }
        return "A plate bitten " + micrometres(depthForWeight)
                + " deep would have lost so much; so would one of another undercut, or with " + way
                + " copper bare. Measure the depth at a wide bar's edge and add --proof-depth: then it is known which.";
    }
}
