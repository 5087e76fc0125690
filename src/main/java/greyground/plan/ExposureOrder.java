package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.micrometres;
import static greyground.plan.StepDraft.seconds;

import greyground.film.job.FilmFields;
import greyground.plan.ExposurePlan.Step;
import greyground.plate.LightSplit;
import greyground.plate.split.ExposureSplit;
import greyground.plate.split.ExposureTrade;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Says how to share the light of photogravure between screen and image, with the trade it was chosen from. */
public final class ExposureOrder {
    /** A film whose black is this close to what is needed has none to spare (assumed). */
    private static final double SPARE_BLACK = 0.1;

    private ExposureOrder() {}

    /**
     * The advised exposures.
     *
     * @param trade that was searched
     * @param times of the advised split
     * @param present what the workshop's numbers give today
     */
    public static Step advice(Workshop workshop, ExposureTrade trade, SplitTimes times, ExposureSplit present) {
        ExposureSplit split = trade.advised();
        Figure[] light = {
            workshop.exposure().screenSeconds(),
            workshop.exposure().imageSeconds(),
            workshop.exposure().stepHeld(),
            workshop.exposure().targetStep()
        };
        Figure[] film = {
            workshop.filmPrinter().clearUvDensity(), workshop.filmPrinter().blackUvDensity()
        };
        StepDraft step = new StepDraft("Screen and image exposure")
                .clock(Math.rint(times.screenSeconds() + times.imageSeconds()))
                .computed(
                        "screen film, black",
                        fixed(split.screenBlack() * 100, 0) + " %",
                        "searched on the virtual plate",
                        workshop.resist().smallestLandMicrometres())
                .computed(
                        "softness of its edges",
                        micrometres(Math.rint(split.edgeBlurMicrometres())),
                        "searched on the virtual plate",
                        workshop.resist().smallestLandMicrometres());
        if (times.spacerMicrometres() > 0) {
            step.computed(
                    "clear sheet under the screen",
                    fixed(times.spacerMicrometres() / 1000, 2) + " mm",
                    "gap whose half-shadow is as soft, at the lamp's half angle",
                    workshop.light().halfAngleDegrees());
        }
        step.computed(
                        "expose the screen",
                        seconds(times.screenSeconds()),
                        fixed(split.screenDose(), 2) + " hardening doses",
                        light)
                .computed(
                        "expose the image",
                        seconds(times.imageSeconds()),
                        fixed(split.imageDose(), 2) + " hardening doses",
                        light)
                .computed(
                        "together they hold wedge step",
                        fixed(times.stepHeld(), 1) + " of 21",
                        "log10 of both doses, 0.15 a step from 0.05",
                        light)
                .computed(
                        "print",
                        "L* " + fixed(split.lightest(), 0) + " to " + fixed(split.darkest(), 0),
                        "virtual plate",
                        light)
                .computed(
                        "the film's tones begin at",
                        "density " + fixed(split.startDensity(), 2),
                        "where the first spots open",
                        film)
                .computed(
                        "its black must reach",
                        "density " + fixed(split.darkestDensity(), 2),
                        "darkest tone, to half a unit of L*",
                        film)
                // A stochastic screen has no regular waves to beat with the positive's.
                .stated("bands between the films", "none");
        if (Double.isFinite(split.turningDensity())) {
            step.computed(
                    "never denser than",
                    "density " + fixed(split.turningDensity(), 2),
                    "above it the blacks print paler",
                    film);
        }
        step.table(table(trade, present));
        double black = workshop.filmPrinter().blackUvDensity().value();
        if (split.darkestDensity() > black - SPARE_BLACK) {
            step.warn("The film's black, density " + fixed(black, 2)
                    + ", is what stops the darkest tone: a denser film would print darker.");
        }
        return step.advise("The starred row is " + ExposureTrade.RULE
                        + ". Gap: lightness that " + Refusal.plain(ExposureSplit.FILM_STEP)
                        + " of film density jumps over, at the light end. Range, light and dark in L*; densities are the"
                        + " positive's, in the lamp's light, clear film included.")
                .advise(
                        "+10 %: by how much a tenth more of both exposures pales the middle tone. The smaller, the more the"
                                + " lamp may wander.")
                .advise(
                        "A softer edge closes the gap; less light through the screen widens the range until lands fail. Try"
                                + " the split on a test plate first: doses stand on the wedge step that the workshop reads.")
                .advise("To make the films by it and have them planned so, give --split " + taken(split) + ".")
                .care(Cautions.LAMP)
                .done();
    }

    /** As --split takes it over. */
    public static String taken(ExposureSplit split) {
        return new FilmFields.Shared(
                        new LightSplit(split.screenDose(), split.imageDose(), split.edgeBlurMicrometres()),
                        split.screenBlack())
                .words();
    }

    private static List<String> table(ExposureTrade trade, ExposureSplit present) {
        List<String> rows = new ArrayList<>();
        rows.add("");
        rows.add(heads(
                "", "dose", "dose", "black", "edge", "gap", "range", "light", "dark", "begins", "black", "+10 %"));
        rows.add(heads("", "screen", "image", "%", "µm", "L*", "L*", "L*", "L*", "D", "D", "L*"));
        for (ExposureSplit split : trade.table()) {
            rows.add(row(split.equals(trade.advised()) ? "*" : " ", split));
        }
        rows.add("as the job has it now:");
        rows.add(row(" ", present));
        rows.add("");
        return rows;
    }

    private static String heads(Object... words) {
        return String.format(Locale.ROOT, "%1s%6s %6s %5s %4s %5s %5s %5s %5s %6s %5s %5s", words);
    }

    private static String row(String mark, ExposureSplit split) {
        return String.format(
                Locale.ROOT,
                "%1s%6.2f %6.2f %5.0f %4.0f %5.1f %5.1f %5.1f %5.1f %6.2f %5.2f %5.1f",
                mark,
                split.screenDose(),
                split.imageDose(),
                split.screenBlack() * 100,
                split.edgeBlurMicrometres(),
                split.lightGap(),
                split.range(),
                split.lightest(),
                split.darkest(),
                split.startDensity(),
                split.darkestDensity(),
                split.tenthMoreLight());
    }
}
