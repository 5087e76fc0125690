package greyground.app.bite;

import greyground.finding.Findings;
import greyground.plan.CopperWeight;
import greyground.plan.ExposurePlan.Step;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.time.LocalDate;

/**
 * Compares the copper that a plate lost on the scale with what was computed for it.
 *
 * @param weight both
 * @param step the comparison, to be read
 */
record WeighedAdvice(CopperWeight weight, Step step) implements BenchAdvice.Answer {
    static WeighedAdvice of(PlannedPlate plate, BiteWords words, LocalDate today) {
        if (plate.job().process() instanceof PlateProcess.UnetchedFilm) {
            throw Refusal.use("process is unetched-film, which loses no copper: weigh a plate of another process");
        }
        Workshop before = words.bath(plate.workshop(), today);
        CopperWeight weight = CopperWeight.of(
                before, plate.request(), words.weighedGrams().orElseThrow(), words.proofDepthMicrometres());
        return new WeighedAdvice(weight, weight.step(before, plate.request()));
    }

    @Override
    public Findings findings() {
        return new Findings()
                .put(
                        "copperByWeight",
                        new Findings()
                                .put("grams", weight.grams())
                                .put("meanDepthMicrometres", weight.meanDepthMicrometres())
                                .put("depthMicrometres", weight.depthMicrometres())
                                .put("depthMeasured", weight.depthMeasured())
                                .put("computedGrams", weight.computedGrams())
                                .put("copperGramsPerLitre", weight.copperGramsPerLitre()));
    }
}
