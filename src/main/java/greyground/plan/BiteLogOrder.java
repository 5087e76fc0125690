package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.micrometres;
import static greyground.plan.StepDraft.minutes;

import greyground.plan.ExposurePlan.Step;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Says a bite log and what further minutes would do, as a step to be read at the bath. */
public final class BiteLogOrder {
    static final String TITLE = "Bite log";

    /** A proof that the virtual plate misses by more than this, root mean square, is not described by it (assumed). */
    private static final double POOR_FIT = 3;

    /** Coverage by which a turning point must move before it is told. */
    private static final double SEEN = 0.01;

    private BiteLogOrder() {}

    /**
     * The log.
     *
     * @param workshop with the bath as it is now
     * @param filmMost the most black that the film's own curve uses, 0 to 1; empty where that isn't known
     */
    public static Step step(Workshop workshop, PlanRequest request, BiteLog log, OptionalDouble filmMost) {
        CopperSteps copper = new CopperSteps(workshop, request);
        BiteLog.State now = log.states().get(log.states().size() - 1);
        String depth = micrometres(now.depthMicrometres()) + " +- " + fixed(now.standardError(), 1);
        StepDraft step = new StepDraft(TITLE).stated("bitten so far", minutes(now.minutes()));
        if (now.readings() > 0) {
            step.computed(
                            "depth so far",
                            depth,
                            "where the virtual plate prints nearest to the proof's " + now.readings() + " tones",
                            copper.rateFrom())
                    .stated("standing at", fixed(now.misfit(), 1) + " L* from them, root mean square");
        } else {
            step.stated("depth so far, as measured", depth);
        }
        step.computed(
                        "rate as the plate goes in again",
                        fixed(log.bath().rateAtStart(), 2) + " µm/min",
                        "the last stretch's rate over the predicted one x today's bath",
                        copper.rateFrom())
                .table(states(log))
                .table(rows(log));
        double poor =
                log.states().stream().mapToDouble(BiteLog.State::misfit).max().orElse(0);
        if (poor > POOR_FIT) {
            step.warn("A proof's tones lie " + fixed(poor, 1)
                    + " L* from the nearest that this workshop can print: the depth is"
                    + " unsure. Check the readings, or teach the workshop with a test plate first.");
        }
        outcome(step, log, filmMost);
        String pace = log.pace();
        return step.advise(pace.substring(0, 1).toUpperCase(Locale.ROOT)
                        + pace.substring(1)
                        + (pace.endsWith("?") ? "" : "."))
                .advise(
                        "Lightness is the print's, absolute L*; light, middle and dark are film coverages of 10, 40 and 80 %; +-"
                                + " is one standard error of the depth.")
                .advise(CopperSteps.AGAIN + ", and pull early rather than late.")
                .care(Cautions.FERRIC)
                .done();
    }

    private static List<String> states(BiteLog log) {
        List<String> rows = new ArrayList<>();
        rows.add("");
        rows.add("proof after   depth    +-   fit      rate    +- predicted");
        rows.add("        min      µm          L*   µm/min           µm/min");
        for (int i = 0; i < log.states().size(); i++) {
            BiteLog.State state = log.states().get(i);
            BiteLog.Stretch stretch = log.stretches().get(i);
            rows.add(String.format(
                    Locale.ROOT,
                    "%11.1f %7.1f %5.1f %5.1f %9.2f %5.2f %9.2f",
                    state.minutes(),
                    state.depthMicrometres(),
                    state.standardError(),
                    state.misfit(),
                    stretch.rate(),
                    stretch.standardError(),
                    stretch.predicted()));
        }
        return rows;
    }

    private static List<String> rows(BiteLog log) {
        List<String> rows = new ArrayList<>();
        rows.add("");
        rows.add("more   depth    +-   light middle  dark  darkest  paler");
        rows.add(" min      µm           L*     L*    L*       L* from %");
        for (BiteLog.Row row : log.rows()) {
            rows.add(String.format(
                    Locale.ROOT,
                    "%4s %7.1f %5.1f %7.1f %6.1f %5.1f %8.1f %6.0f",
                    row.moreMinutes() == 0 ? "none" : "+" + Refusal.plain(row.moreMinutes()),
                    row.depthMicrometres(),
                    row.standardError(),
                    row.light(),
                    row.middle(),
                    row.dark(),
                    row.tones().darkest(),
                    row.tones().turningCoverage() * 100));
        }
        rows.add("");
        return rows;
    }

    private static void outcome(StepDraft step, BiteLog log, OptionalDouble filmMost) {
        List<BiteLog.Row> rows = log.rows();
        if (log.endsNoDarker()) {
            BiteLog.Row last = rows.get(rows.size() - 1);
            step.advise(
                    rows.size() == 2
                            ? "Further minutes print no darker: the plate is as black as it can be."
                            : "Past about +" + Refusal.plain(last.moreMinutes() / 2)
                                    + " min the print gets no darker.");
        }
        double before = rows.get(0).tones().turningCoverage();
        for (BiteLog.Row row : rows) {
            double turns = row.tones().turningCoverage();
            boolean opens = filmMost.isPresent()
                    ? turns < filmMost.getAsDouble() - SEEN
                    : row.moreMinutes() > 0 && turns < before - SEEN;
            if (opens) {
                String from = row.moreMinutes() == 0
                        ? "Already now"
                        : "From +" + Refusal.plain(row.moreMinutes()) + " min on";
                String film = filmMost.isPresent()
                        ? "; this film uses up to " + fixed(filmMost.getAsDouble() * 100, 0) + " %"
                        : ", where now it is " + fixed(before * 100, 0) + " %";
                step.warn(from + " tones past " + fixed(turns * 100, 0) + " % black lose their lands and bite open"
                        + film + ".");
                return;
            }
        }
        step.advise("No tone that holds now bites open within these minutes.");
    }
}
