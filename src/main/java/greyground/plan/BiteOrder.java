package greyground.plan;

import static greyground.plan.StepDraft.fixed;
import static greyground.plan.StepDraft.micrometres;
import static greyground.plan.StepDraft.minutes;

import greyground.plan.ExposurePlan.Step;
import greyground.quantity.Durations;
import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Says a planned bite, or a second bite after a proof, as steps to be read at the bath. */
public final class BiteOrder {
    /** Lightness by which a longer bite must print its blacks paler before it is called open bite. */
    private static final double PALER = 0.5;

    private static final double ODD_RATE = 2;

    private BiteOrder() {}

    /**
     * What a bite is for.
     *
     * @param words such as "a darkest tone of L* 24"
     * @param predicted whether its depth was found on the virtual plate, and not asked itself
     */
    public record Wish(String words, boolean predicted) {}

    /**
     * What a proof told.
     *
     * @param words such as "a solid of density 1.1"
     * @param measured whether it told the depth itself
     */
    public record Proof(String words, boolean measured) {}

    /** The bite, with what a little less or more time does. */
    public static Step bite(Workshop workshop, PlanRequest request, BitePlan plan, Wish wish) {
        CopperSteps copper = new CopperSteps(workshop, request);
        Bite bite = Bite.of(workshop, request, plan.depthMicrometres());
        StepDraft step = new StepDraft("Bite")
                .clock(StepDraft.clockSeconds(plan.minutes()))
                .stated("wanted", wish.words());
        depthFor(step, wish, plan.depthMicrometres(), copper);
        copper.bathNow(step, bite)
                .computed(
                        "bite for",
                        minutes(plan.minutes()),
                        "depth / rate, slowing as copper dissolves",
                        copper.rateFrom(workshop.bath().litres()))
                .table(table(plan));
        copper.warnings(step, bite, plan.depthMicrometres());
        openBite(step, plan);
        return step.advise(
                        "Lightness is the print's, absolute L*: paper, the lightest tone that holds, the darkest. The film's"
                                + " curve was made for the workshop's usual depth; another depth shifts the tones between them.")
                .advise(
                        "Read the thermometer in the bath. Pull the plate at the 80 % time, rinse and look before you go on.")
                .care(Cautions.FERRIC)
                .done();
    }

    private static void depthFor(StepDraft step, Wish wish, double depthMicrometres, CopperSteps copper) {
        if (wish.predicted()) {
            step.computed(
                    "depth for it",
                    micrometres(depthMicrometres),
                    "least depth at which the virtual plate prints so dark",
                    copper.rateFrom());
        }
    }

    private static List<String> table(BitePlan plan) {
        boolean predicted = plan.planned().tones() != null;
        List<String> rows = new ArrayList<>();
        rows.add("");
        rows.add("time      depth under least solid copper" + (predicted ? "  print L*      paler" : ""));
        rows.add("   %   min   µm   cut  land     D   g/L" + (predicted ? "   light  dark from %" : ""));
        for (BitePlan.Row row : plan.rows()) {
            BittenTones tones = row.tones();
            String copper = String.format(
                    Locale.ROOT,
                    "%4.0f %5.1f %4.1f %5.1f %5.1f %5.2f %5.1f",
                    row.timePercent(),
                    row.minutes(),
                    row.depthMicrometres(),
                    row.undercutMicrometres(),
                    row.leastLandMicrometres(),
                    row.solidDensity(),
                    row.copperGramsPerLitre());
            String print = tones == null
                    ? ""
                    : String.format(
                            Locale.ROOT,
                            " %7.1f %5.1f %6.0f",
                            tones.lightest(),
                            tones.darkest(),
                            tones.turningCoverage() * 100);
            rows.add(copper + print);
        }
        rows.add("");
        return rows;
    }

    private static void openBite(StepDraft step, BitePlan plan) {
        BittenTones usual = plan.planned().tones();
        BittenTones longest = plan.rows().get(plan.rows().size() - 1).tones();
        if (usual != null && longest != null && longest.darkest() > usual.darkest() + PALER) {
            step.warn("A fifth more time prints the darkest tone " + fixed(longest.darkest() - usual.darkest(), 1)
                    + " L* paler: the lands go and the blacks bite open. Rather pull early than late.");
        }
    }

    /**
     * The second bite.
     *
     * @param then the workshop with the bath of the first bite
     * @param workshop with the bath as it is now
     */
    public static Step again(
            Workshop then, Workshop workshop, PlanRequest request, BiteAgain again, Proof proof, Wish wish) {
        CopperSteps copper = new CopperSteps(workshop, request);
        StepDraft step = new StepDraft("Bite again")
                .clock(StepDraft.clockSeconds(again.minutesMore()))
                .stated("bitten so far", minutes(again.minutesSoFar()))
                .computed(
                        "that bath was taken to have",
                        Refusal.plain(then.bath().temperatureCelsius().value()) + " °C, "
                                + fixed(then.bath().copperGramsPerLitre().value(), 1) + " g/L",
                        "the workshop's bath before this plate",
                        then.bath().temperatureCelsius(),
                        then.bath().copperGramsPerLitre())
                .stated("the proof shows", proof.words());
        if (!proof.measured()) {
            step.computed(
                    "depth so far",
                    micrometres(again.depthMicrometres()),
                    "from the solid's density by the ink's numbers",
                    workshop.ink().strengthPerMicrometre(),
                    workshop.ink().transferFraction());
        }
        step.computed(
                        "this bath against the plan",
                        StepDraft.times(again.rateOverPlan()),
                        "depth so far / depth that the numbers predicted",
                        copper.rateFrom())
                .stated("wanted", wish.words());
        depthFor(step, wish, again.wantedMicrometres(), copper);
        copper.bathNow(step, again.bath())
                .computed(
                        "bite again for",
                        again.minutesMore() == 0 ? "not at all" : minutes(again.minutesMore()),
                        "depth still to go / rate, slowing as copper dissolves",
                        copper.rateFrom(workshop.bath().litres()));
        if (again.minutesMore() == 0) {
            step.warn(
                    "The plate is as deep as is wanted, or deeper: biting again only undercuts. Burnish what is too dark.");
        } else if (again.rateOverPlan() > ODD_RATE || again.rateOverPlan() < 1 / ODD_RATE) {
            step.warn("This bath bit " + fixed(again.rateOverPlan(), 2)
                    + " times as fast as the workshop's numbers say. Measure a depth in a wide bar's edge before trusting"
                    + " either, and correct bath.rateMicrometresPerMinute.");
        }
        return step.advise(CopperSteps.AGAIN + ".").care(Cautions.FERRIC).done();
    }

    private static String clock(Step step) {
        if (step.seconds() > 0) {
            return Durations.format(step.seconds());
        }
        if (step.title().equals(CopperWeight.TITLE)) {
            return "beside what was computed";
        }
        return step.title().equals(BiteLogOrder.TITLE)
                ? "choose the minutes by what they would print"
                : "nothing more to do";
    }

    /** Steps as a plan of their own, under the film's facts; its summary tells their clocks. */
    public static ExposurePlan plan(Step film, List<Step> steps) {
        List<Step> all = new ArrayList<>();
        all.add(film);
        all.addAll(steps);
        String summary =
                steps.stream().map(step -> step.title() + ": " + clock(step)).collect(Collectors.joining("; "));
        return new ExposurePlan(all, summary, Cautions.LEAD);
    }
}
