package greyground.app.bite;

import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.finding.Findings;
import greyground.json.JsonText;
import greyground.plan.BiteOrder;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.PlanJson;
import greyground.plan.PlanText;
import greyground.raster.Progress;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Answers what a person asks about a plate at the bench: its whole plan, or the exposure or bite that was asked for.
 *
 * @param plate with the bath as it is told
 * @param exposure the two exposures of photogravure, if they were searched
 * @param bite a bite or a second bite, if one was asked for
 * @param log the plate's bite log, if proofs were measured
 */
public record BenchAdvice(
        PlannedPlate plate, Optional<ExposureAdvice> exposure, Optional<BiteAdvice> bite, Optional<BiteLogAdvice> log) {
    /**
     * Works the answer out.
     *
     * @param film the PDF whose curve says how much black it uses; empty where no film is made
     * @param searchExposure whether to search the split of two exposures
     * @param today when temperature and copper were read
     */
    public static BenchAdvice of(
            PlannedPlate plate,
            BiteWords words,
            Optional<Path> film,
            boolean searchExposure,
            LocalDate today,
            Progress progress)
            throws IOException {
        double share = !searchExposure ? 0 : words.asked() ? 0.5 : 1;
        double depth = words.depthMicrometres().orElse(plate.workshop().usualDepthMicrometres());
        Optional<ExposureAdvice> exposure = searchExposure
                ? Optional.of(ExposureAdvice.of(plate, depth, progress.part(0, share)))
                : Optional.empty();
        Optional<BiteLogAdvice> log = words.logAsked()
                ? Optional.of(BiteLogAdvice.of(plate, words, film, today, progress.part(share, 1)))
                : Optional.empty();
        Optional<BiteAdvice> bite = words.asked() && !words.logAsked()
                ? Optional.of(BiteAdvice.of(plate, words, today, progress.part(share, 1)))
                : Optional.empty();
        PlannedPlate now = words.bathTold() ? plate.in(words.bath(plate.workshop(), today)) : plate;
        return new BenchAdvice(now, exposure, bite, log);
    }

    /** To be read at the bench. */
    public String text() {
        if (exposure.isEmpty() && bite.isEmpty() && log.isEmpty()) {
            return PlanText.of(plate.plan());
        }
        List<Step> steps = new ArrayList<>();
        exposure.ifPresent(advice -> steps.add(advice.step()));
        bite.ifPresent(advice -> steps.add(advice.step()));
        log.ifPresent(advice -> steps.add(advice.step()));
        ExposurePlan answer = BiteOrder.plan(plate.plan().steps().get(0), steps);
        return PlanText.of(heading(), answer);
    }

    private String heading() {
        if (log.isPresent()) {
            return exposure.isEmpty() ? "BITE LOG" : "EXPOSURE ADVICE AND BITE LOG";
        }
        if (bite.isEmpty()) {
            return "EXPOSURE ADVICE";
        }
        return exposure.isEmpty() ? "BITE PLAN" : "EXPOSURE ADVICE AND BITE PLAN";
    }

    /** For another program. */
    public String json() {
        if (exposure.isEmpty() && bite.isEmpty() && log.isEmpty()) {
            return PlanJson.text(plate.plan());
        }
        ObjectNode tree = new Findings()
                .put("greyground", "advice")
                .put("version", 1)
                .put("title", plate.job().title())
                .put("process", plate.job().process().word())
                .tree();
        exposure.ifPresent(advice -> tree.setAll(advice.findings().tree()));
        bite.ifPresent(advice -> tree.setAll(advice.findings().tree()));
        log.ifPresent(advice -> tree.setAll(advice.findings().tree()));
        return JsonText.print(tree);
    }
}
