package greyground.app.bite;

import greyground.app.recipe.JobPlate;
import greyground.finding.Findings;
import greyground.plan.Bite;
import greyground.plan.BiteAgain;
import greyground.plan.BiteOrder;
import greyground.plan.BitePlan;
import greyground.plan.BittenTones;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.PlanRequest;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Plans a bite to a wished depth or darkest tone, and a second bite after a proof.
 *
 * @param workshop with the bath as it is told
 * @param plan the whole bite to the wish
 * @param again the second bite, if a proof was given
 * @param step what to do next, to be read at the bath
 */
public record BiteAdvice(Workshop workshop, BitePlan plan, Optional<BiteAgain> again, Step step)
        implements BenchAdvice.Answer {
    /** Plans, in the workshop as it was before this bite. */
    public static BiteAdvice of(PlannedPlate plate, BiteWords words, LocalDate today, Progress progress) {
        if (plate.job().process() instanceof PlateProcess.UnetchedFilm) {
            throw Refusal.use("process is unetched-film, which is never bitten: ask for a bite of another process");
        }
        PlanRequest request = plate.request();
        Workshop before = plate.workshop();
        Workshop now = words.bath(before, today);
        BittenTones.OfDepth tones = kept(JobPlate.of(now, plate.job()), progress);
        if (words.bittenMinutes().isEmpty()) {
            BitePlan plan = plan(now, request, words, tones);
            return new BiteAdvice(now, plan, Optional.empty(), BiteOrder.bite(now, request, plan, wish(now, words)));
        }
        double minutes = words.bittenMinutes().getAsDouble();
        double depth = words.proofDepthMicrometres().isPresent()
                ? words.proofDepthMicrometres().getAsDouble()
                : BitePlan.depthFor(before, words.proofDensity().orElseThrow());
        if (!words.copperTold()) {
            now = Bite.after(before, now, request, depth);
        }
        // Only the depth matters now; what each row prints was told before the first bite.
        BitePlan plan = plan(now, request, words, words.darkestLightness().isPresent() ? tones : anyDepth -> null);
        BiteAgain again = BiteAgain.of(before, now, request, minutes, depth, plan.depthMicrometres());
        boolean measured = words.proofDepthMicrometres().isPresent();
        BiteOrder.Proof proof = new BiteOrder.Proof(
                measured
                        ? "a depth of " + Refusal.plain(depth) + " µm"
                        : "a solid of density "
                                + Refusal.plain(words.proofDensity().orElseThrow()),
                measured);
        return new BiteAdvice(
                now, plan, Optional.of(again), BiteOrder.again(before, now, request, again, proof, wish(now, words)));
    }

    private static BitePlan plan(Workshop now, PlanRequest request, BiteWords words, BittenTones.OfDepth tones) {
        return words.darkestLightness().isPresent()
                ? BitePlan.toDarkest(now, request, words.darkestLightness().getAsDouble(), tones)
                : BitePlan.toDepth(now, request, words.depthMicrometres().orElse(now.usualDepthMicrometres()), tones);
    }

    private static BiteOrder.Wish wish(Workshop workshop, BiteWords words) {
        if (words.darkestLightness().isPresent()) {
            return new BiteOrder.Wish(
                    "a darkest tone of L* "
                            + Refusal.plain(words.darkestLightness().getAsDouble()),
                    true);
        }
        return new BiteOrder.Wish(
                words.depthMicrometres().isPresent()
                        ? "a depth of " + Refusal.plain(words.depthMicrometres().getAsDouble()) + " µm"
                        : "the workshop's usual depth, " + Refusal.plain(workshop.usualDepthMicrometres()) + " µm",
                false);
    }

    /** Each depth is predicted once. How many there will be nobody knows, so that progress nears its end ever more slowly. */
    private static BittenTones.OfDepth kept(JobPlate plate, Progress progress) {
        Map<Double, BittenTones> predicted = new HashMap<>();
        return depth -> {
            BittenTones known = predicted.get(depth);
            if (known == null) {
                known = BittenTones.of(plate.response(plate.conditions(depth)));
                predicted.put(depth, known);
                progress.done(1 - StrictMath.pow(0.85, predicted.size()));
            }
            return known;
        };
    }

    @Override
    public Findings findings() {
        Findings findings = new Findings()
                .put(
                        "bite",
                        new Findings()
                                .put("wantedDepthMicrometres", plan.depthMicrometres())
                                .put("minutes", plan.minutes())
                                .put(
                                        "bathCelsius",
                                        workshop.bath().temperatureCelsius().value())
                                .put(
                                        "bathCopperGramsPerLitre",
                                        workshop.bath().copperGramsPerLitre().value())
                                .rows(
                                        "rows",
                                        plan.rows().stream()
                                                .map(BiteAdvice::row)
                                                .toList()));
        again.ifPresent(second -> findings.put(
                "biteAgain",
                new Findings()
                        .put("minutesSoFar", second.minutesSoFar())
                        .put("depthMicrometres", second.depthMicrometres())
                        .put("wantedDepthMicrometres", second.wantedMicrometres())
                        .put("rateOverPlan", second.rateOverPlan())
                        .put("minutesMore", second.minutesMore())));
        return findings;
    }

    private static Findings row(BitePlan.Row row) {
        Findings figures = new Findings()
                .put("timePercent", row.timePercent())
                .put("minutes", row.minutes())
                .put("depthMicrometres", row.depthMicrometres())
                .put("undercutMicrometres", row.undercutMicrometres())
                .put("leastLandMicrometres", row.leastLandMicrometres())
                .put("solidDensity", row.solidDensity())
                .put("copperGramsPerLitre", row.copperGramsPerLitre());
        BittenTones tones = row.tones();
        return tones == null
                ? figures
                : figures.put("printableRange", tones.lightest(), tones.darkest())
                        .put("bareLightness", tones.bare())
                        .put("turningPoint", tones.turningCoverage());
    }
}
