package greyground.app.bite;

import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.plan.ExposureOrder;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.SplitTimes;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.split.ExposureSearch;
import greyground.plate.split.ExposureSplit;
import greyground.plate.split.ExposureTrade;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.util.List;

/**
 * How to share the light of a photogravure plate between its screen and its image.
 *
 * @param trade what was searched
 * @param times of the advised split at this bench
 * @param present what the workshop's numbers give today
 * @param step to be read at the lamp
 */
public record ExposureAdvice(ExposureTrade trade, SplitTimes times, ExposureSplit present, Step step)
        implements BenchAdvice.Answer {
    /**
     * Searches.
     *
     * @param depthMicrometres to which the plate will be bitten
     */
    public static ExposureAdvice of(PlannedPlate plate, double depthMicrometres, Progress progress) throws IOException {
        Job job = plate.job();
        if (!(job.process() instanceof PlateProcess.Photogravure process)) {
            throw Refusal.use(
                    "process is " + job.process().word()
                            + "; only photogravure is exposed twice: add --process photogravure, or leave out --search-exposure");
        }
        Workshop workshop = plate.workshop();
        JobPlate virtual = JobPlate.of(workshop, job);
        PlateConditions conditions = virtual.conditions(depthMicrometres);
        FilmPatches screens = virtual.screens().orElseThrow();
        ExposureSearch.Reach reach = ExposureSearch.Reach.usual(
                process.screenSpacingMicrometres(), SplitTimes.sharpestMicrometres(workshop, conditions));
        ExposureSearch search = new ExposureSearch(conditions, screens, reach);
        ExposureTrade trade = search.search(progress);
        ExposureSplit present = search.judge(
                SplitTimes.present(conditions), process.screenBlack(), SplitTimes.presentBlurMicrometres(conditions));
        SplitTimes times = SplitTimes.of(workshop, conditions, trade.advised());
        return new ExposureAdvice(trade, times, present, ExposureOrder.advice(workshop, trade, times, present));
    }

    @Override
    public Findings findings() {
        return new Findings()
                .put(
                        "exposure",
                        new Findings()
                                .put("rule", ExposureTrade.RULE)
                                .put("advised", row(trade.advised()))
                                .put("today", row(present))
                                .put("screenSeconds", times.screenSeconds())
                                .put("imageSeconds", times.imageSeconds())
                                .put("stepHeld", times.stepHeld())
                                .put("spacerMicrometres", times.spacerMicrometres())
                                .put("split", ExposureOrder.taken(trade.advised()))
                                .rows(
                                        "trade",
                                        trade.rows().stream()
                                                .map(ExposureAdvice::row)
                                                .toList()))
                .rows("interference", List.of());
    }

    private static Findings row(ExposureSplit split) {
        Findings row = new Findings()
                .put("screenDose", split.screenDose())
                .put("imageDose", split.imageDose())
                .put("screenBlack", split.screenBlack())
                .put("edgeBlurMicrometres", split.edgeBlurMicrometres())
                .put("lightGap", split.lightGap())
                .put("range", split.range())
                .put("lightest", split.lightest())
                .put("darkest", split.darkest())
                .put("startDensity", split.startDensity())
                .put("darkestDensity", split.darkestDensity())
                .put("tenthMoreLight", split.tenthMoreLight());
        return Double.isFinite(split.turningDensity()) ? row.put("turningDensity", split.turningDensity()) : row;
    }
}
