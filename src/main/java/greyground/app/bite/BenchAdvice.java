package greyground.app.bite;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.finding.Findings;
import greyground.json.JsonText;
import greyground.plan.BiteOrder;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.PlanJson;
import greyground.plan.PlanText;
import greyground.raster.Progress;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Answers what a person asks about a plate at the bench: its whole plan, or the exposure or bite that was asked for.
 *
 * @param plate with the bath as it is told
 * @param exposure the two exposures of photogravure, if they were searched
 * @param bite a bite or a second bite, if one was asked for
 * @param log the plate's bite log, if proofs were measured
 * @param weighed what the scale says of the bitten plate, if it was asked
 */
public record BenchAdvice(
        PlannedPlate plate,
        Optional<ExposureAdvice> exposure,
        Optional<BiteAdvice> bite,
        Optional<BiteLogAdvice> log,
        Optional<WeighedAdvice> weighed) {
    /** Works the answer out; {@code app.Greyground} says of what. */
    public static BenchAdvice of(
            PlannedPlate plate, BiteWords words, boolean searchExposure, LocalDate today, Progress progress)
            throws IOException {
        double share = !searchExposure ? 0 : words.asked() ? 0.5 : 1;
        double depth = words.depthMicrometres().orElse(plate.workshop().usualDepthMicrometres());
        Optional<ExposureAdvice> exposure = searchExposure
                ? Optional.of(ExposureAdvice.of(plate, depth, progress.part(0, share)))
                : Optional.empty();
        Optional<BiteLogAdvice> log = words.logAsked()
                ? Optional.of(BiteLogAdvice.of(plate, words, today, progress.part(share, 1)))
                : Optional.empty();
        boolean onScale = words.weighedGrams().isPresent();
        Optional<WeighedAdvice> weighed =
                onScale ? Optional.of(WeighedAdvice.of(plate, words, today)) : Optional.empty();
        Optional<BiteAdvice> bite = words.asked() && !onScale && !words.logAsked()
                ? Optional.of(BiteAdvice.of(plate, words, today, progress.part(share, 1)))
                : Optional.empty();
        PlannedPlate now = words.bathTold() ? plate.in(words.bath(plate.workshop(), today)) : plate;
        return new BenchAdvice(now, exposure, bite, log, weighed);
    }

    /** What was asked for, in words and figures. */
    interface Answer {
        Step step();

        Findings findings();
    }

    private List<Answer> answers() {
        return Stream.<Optional<? extends Answer>>of(exposure, bite, log, weighed)
                .<Answer>flatMap(Optional::stream)
                .toList();
    }

    public String text() {
        if (answers().isEmpty()) {
            return PlanText.of(plate.plan());
        }
        String atTheBath = log.isPresent()
                ? "BITE LOG"
                : bite.isPresent() ? "BITE PLAN" : weighed.isPresent() ? "COPPER BY WEIGHT" : "";
        String heading = Stream.of(exposure.isPresent() ? "EXPOSURE ADVICE" : "", atTheBath)
                .filter(words -> !words.isEmpty())
                .collect(Collectors.joining(" AND "));
        List<Step> steps = answers().stream().map(Answer::step).toList();
        return PlanText.of(heading, BiteOrder.plan(plate.plan().steps().get(0), steps));
    }

    /** For another program. */
    public String json() {
        if (answers().isEmpty()) {
            return PlanJson.text(plate.plan());
        }
        ObjectNode tree = JsonText.file("advice", 1);
        tree.put("title", plate.job().title());
        tree.put("process", plate.job().process().word());
        answers().forEach(answer -> tree.setAll(answer.findings().tree()));
        return JsonText.print(tree);
    }
}
