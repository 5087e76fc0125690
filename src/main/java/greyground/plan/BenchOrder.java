package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.micrometres;
import static greyground.plan.StepDraft.minutes;
import static greyground.plan.StepDraft.seconds;

import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.plan.ExposurePlan.Step;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Puts a plate's steps in the order they are done at the bench, for each of the processes. */
public final class BenchOrder {
    /** Title of the first entry, which holds the film's facts and is not numbered. */
    public static final String FILM = "The film";

    private static final String CURVE = "curve";
    private static final String RESERVE = "reserve";
    private static final String BLACK = "black on the film";
    private static final String BLACK_UNIT = " % of the plate";

    private BenchOrder() {}

    /** Plans a plate from the workshop's numbers. Pure: the same workshop and request give the same plan. */
    public static ExposurePlan plan(Workshop workshop, PlanRequest request) {
        ExposureTimes times = ExposureTimes.of(workshop, request.process());
        List<Step> steps = new ArrayList<>();
        steps.add(film(workshop, request));
        ResistSteps resist = new ResistSteps(workshop, request, times);
        steps.add(resist.filmCheck());
        steps.add(resist.laminate());
        if (request.isBitten()) {
            steps.add(resist.thinning());
        }
        steps.addAll(resist.exposures());
        steps.add(resist.hold());
        steps.add(resist.developing());
        CopperSteps copper = new CopperSteps(workshop, request);
        if (request.isBitten()) {
            steps.add(copper.brighten());
        }
        if (request.process() instanceof PlateProcess.SprayedAquatint ground) {
            steps.add(copper.aquatint(ground));
        }
        if (request.isBitten()) {
            steps.add(copper.stopOut());
        }
        steps.add(copper.hardening());
        if (request.isBitten()) {
            steps.add(copper.bite());
            steps.add(copper.firstProof());
            steps.add(copper.biteAgain());
            steps.add(copper.strip());
        }
        steps.add(copper.edition());
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
        Job job = request.job();
        StepDraft film = new StepDraft(FILM)
                .stated("film", job.title())
                .stated("date", job.date())
                .stated("workshop", workshop.name())
                .stated("process", job.process().words())
                .stated("plate", job.plate().toString())
                .stated("resolution", Refusal.plain(job.resolution().dotsPerInch()) + " dpi")
                .stated("tone carried by", job.grain().name())
                .stated(CURVE, request.curveName())
                .stated(RESERVE, request.reserve())
                .stated(BLACK, fixed(request.meanCoverage() * 100, 0) + BLACK_UNIT);
        wedge(job.placing().strip()).ifPresent(words -> film.stated("wedge", words));
        workshop.filmPrinter().pixels(job.resolution()).words().ifPresent(words -> film.stated("true size", words));
        if (request.process() instanceof PlateProcess.Photogravure screen) {
            film.stated(
                    "screen film",
                    fixed(screen.screenBlack() * 100, 0) + " % black, spacing "
                            + micrometres(screen.screenSpacingMicrometres()));
        }
        return film.done();
    }

    private static Optional<String> wedge(Placing.Strip strip) {
        return switch (strip) {
            case BESIDE -> Optional.empty();
            case OFFCUT ->
                Optional.of(
                        "on an offcut, which is laminated, exposed in its frame below the plate, developed, bitten and"
                                + " printed with it");
            case MARGIN -> Optional.of("in the plate's margin, bitten and printed with the picture");
            case NONE -> Optional.of("none on this film");
        };
    }

    /** The share of black on the film that a plan was made for, 0 to 1, to the whole percent that it states. */
    public static double meanCoverage(ExposurePlan plan) {
        return share(BLACK, fact(plan, BLACK), BLACK_UNIT);
    }

    private static double share(String what, String stated, String unit) {
        try {
            return Double.parseDouble(stated.replace(unit, "")) / 100;
        } catch (NumberFormatException damaged) {
            throw Refusal.use("plan says that " + what + " is \"" + stated
                    + "\"; it must be a percentage: make the plan again from the art");
        }
    }

    /**
     * What a plan's bath takes of its plate; empty of a plan that doesn't say, as those of version 0.2.0, or has no bath.
     *
     * @param depthMicrometres usual in the plan's workshop
     */
    public static Optional<CopperLoss> loss(ExposurePlan plan, double depthMicrometres) {
        String bare = fact(plan, CopperSteps.BARE);
        String taken = fact(plan, CopperSteps.TAKEN);
        return bare.isEmpty() || taken.isEmpty()
                ? Optional.empty()
                : Optional.of(new CopperLoss(
                        share(CopperSteps.BARE, bare, CopperSteps.SHARE_UNIT),
                        share(CopperSteps.TAKEN, taken, CopperSteps.SHARE_UNIT),
                        depthMicrometres));
    }

    /** The curve that a plan's film went through. */
    public static String curveName(ExposurePlan plan) {
        return fact(plan, CURVE);
    }

    /** Where a plan's film stops its blacks, in words; empty where it doesn't. */
    public static String reserve(ExposurePlan plan) {
        return fact(plan, RESERVE);
    }

    private static String fact(ExposurePlan plan, String label) {
        return plan.steps().stream()
                .flatMap(step -> step.lines().stream())
                .filter(line -> line.label().equals(label))
                .map(ExposurePlan.Line::value)
                .findFirst()
                .orElse("");
    }
}
