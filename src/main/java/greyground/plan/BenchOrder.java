package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.minutes;
import static greyground.plan.StepDraft.seconds;

import greyground.plan.ExposurePlan.Step;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;

/** Puts a plate's steps in the order they are done at the bench, for each of the processes. */
public final class BenchOrder {
    /** Title of the first entry, which holds the film's facts and is not numbered. */
    public static final String FILM = "The film";

    private BenchOrder() {}

    /** Plans a plate from the workshop's numbers. Pure: the same workshop and request give the same plan. */
    public static ExposurePlan plan(Workshop workshop, PlanRequest request) {
        ExposureTimes times = ExposureTimes.of(workshop);
        List<Step> steps = new ArrayList<>();
        steps.add(film(workshop, request));
        ResistSteps resist = new ResistSteps(workshop, request, times);
        steps.add(resist.laminate());
        if (request.isBitten()) {
            steps.add(resist.thinning());
        }
        steps.add(resist.filmCheck());
        steps.addAll(resist.exposures());
        steps.add(resist.hold());
        steps.add(resist.developing());
        CopperSteps copper = new CopperSteps(workshop, request);
        if (request.process() instanceof PlateProcess.SprayedAquatint ground) {
            steps.add(copper.aquatint(ground));
        }
        if (request.isBitten()) {
            steps.add(copper.stopOut());
        }
        steps.add(copper.hardening());
        if (request.isBitten()) {
            steps.add(copper.bite());
            steps.add(copper.strip());
        }
        steps.add(copper.proof());
        if (request.isBitten()) {
            steps.add(copper.biteAgain());
        }
        return new ExposurePlan(steps, summary(workshop, request, times), Cautions.LEAD);
    }

    private static String summary(Workshop workshop, PlanRequest request, ExposureTimes times) {
        String exposure = request.separateScreen()
                ? "expose screen " + seconds(times.screenSeconds()) + ", image " + seconds(times.imageSeconds())
                : "expose " + seconds(times.togetherSeconds()) + ", no separate screen";
        String bite = request.isBitten()
                ? "bite " + minutes(CopperSteps.biteMinutes(workshop, Bite.of(workshop, request)))
                : "no bite";
        return exposure.replaceAll(" \\([0-9:]+\\)", "") + "; " + bite;
    }

    private static Step film(Workshop workshop, PlanRequest request) {
        StepDraft film = new StepDraft(FILM)
                .stated("film", request.filmName())
                .stated("date", request.date())
                .stated("workshop", workshop.name())
                .stated("process", request.process().word())
                .stated("plate", request.plate().toString())
                .stated("resolution", Refusal.plain(request.resolution().dotsPerInch()) + " dpi")
                .stated("tone carried by", request.grainName())
                .stated("curve", request.curveName())
                .stated("black on the film", fixed(request.meanCoverage() * 100, 0) + " % of the plate");
        if (request.process() instanceof PlateProcess.Photogravure screen) {
            film.stated(
                    "screen film",
                    fixed(screen.screenBlack() * 100, 0) + " % black, spacing "
                            + ResistSteps.micrometres(screen.screenSpacingMicrometres()));
        }
        return film.done();
    }
}
