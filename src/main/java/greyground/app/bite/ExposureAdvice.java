package greyground.app.bite;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import greyground.app.kept.GrainTiles;
import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.grain.AquatintScreen;
import greyground.grain.DotSpectrum;
import greyground.grain.Interference;
import greyground.json.JsonText;
import greyground.plan.ExposureOrder;
import greyground.plan.ExposurePlan.Step;
import greyground.plan.SplitTimes;
import greyground.plate.Exposure;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.split.ExposureSearch;
import greyground.plate.split.ExposureSplit;
import greyground.plate.split.ExposureTrade;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;

/**
 * How to share the light of a photogravure plate between its screen and its image, and whether its two films will band.
 *
 * @param trade what was searched
 * @param times of the advised split at this bench
 * @param present what the workshop's numbers give today
 * @param interference between the positive's dots and the screen's, at the advised softness
 * @param step to be read at the lamp
 */
public record ExposureAdvice(
        ExposureTrade trade, SplitTimes times, ExposureSplit present, Interference interference, Step step) {
    /** Dots are seen best near half coverage. */
    private static final double HALF = 0.5;

    /**
     * Searches.
     *
     * @param depthMicrometres to which the plate will be bitten
     */
    public static ExposureAdvice of(PlannedPlate plate, double depthMicrometres, Progress progress) throws Exception {
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
        Interference interference = interference(job, process, conditions, trade.advised());
        return new ExposureAdvice(
                trade,
                times,
                present,
                interference,
                ExposureOrder.advice(workshop, trade, times, present, interference.words()));
    }

    private static Interference interference(
            Job job, PlateProcess.Photogravure process, PlateConditions conditions, ExposureSplit split) {
        double blur = conditions.exposures().stream()
                .filter(exposure -> exposure.sheet() == Exposure.Sheet.POSITIVE)
                .mapToDouble(Exposure::blurMicrometres)
                .findFirst()
                .orElse(0);
        DotSpectrum positive = GrainTiles.positive(job)
                .map(tile -> DotSpectrum.of(tile, HALF, job.resolution()))
                .orElseGet(() -> DotSpectrum.ofPrinter(job.resolution()));
        AquatintScreen screen = GrainTiles.screen(process, job.resolution());
        return Interference.between(
                positive.blurred(blur),
                DotSpectrum.of(screen.tile(), split.screenBlack(), job.resolution())
                        .blurred(split.edgeBlurMicrometres()));
    }

    /** Adds the advice to a JSON object. */
    public void describe(ObjectNode tree) {
        ObjectNode exposure = tree.putObject("exposure");
        exposure.put("rule", ExposureTrade.RULE);
        exposure.set("advised", row(trade.advised()));
        exposure.set("today", row(present));
        exposure.set("screenSeconds", JsonText.number(times.screenSeconds()));
        exposure.set("imageSeconds", JsonText.number(times.imageSeconds()));
        exposure.set("stepHeld", JsonText.number(times.stepHeld()));
        exposure.set("spacerMicrometres", JsonText.number(times.spacerMicrometres()));
        ArrayNode rows = exposure.putArray("trade");
        trade.rows().forEach(split -> rows.add(row(split)));
        ArrayNode beats = tree.putArray("interference");
        for (Interference.Beat beat : interference.beats()) {
            ObjectNode node = beats.addObject();
            node.set("spacingMillimetres", JsonText.number(beat.spacingMillimetres()));
            node.set("directionDegrees", JsonText.number(beat.directionDegrees()));
            node.set("strength", JsonText.number(beat.strength()));
        }
    }

    private static ObjectNode row(ExposureSplit split) {
        ObjectNode node = JsonText.object();
        node.set("screenDose", JsonText.number(split.screenDose()));
        node.set("imageDose", JsonText.number(split.imageDose()));
        node.set("screenBlack", JsonText.number(split.screenBlack()));
        node.set("edgeBlurMicrometres", JsonText.number(split.edgeBlurMicrometres()));
        node.set("lightGap", JsonText.number(split.lightGap()));
        node.set("range", JsonText.number(split.range()));
        node.set("lightest", JsonText.number(split.lightest()));
        node.set("darkest", JsonText.number(split.darkest()));
        node.set("startDensity", JsonText.number(split.startDensity()));
        node.set("darkestDensity", JsonText.number(split.darkestDensity()));
        if (Double.isFinite(split.turningDensity())) {
            node.set("turningDensity", JsonText.number(split.turningDensity()));
        }
        node.set("tenthMoreLight", JsonText.number(split.tenthMoreLight()));
        return node;
    }
}
