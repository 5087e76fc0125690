package greyground.plan;

import greyground.quantity.Refusal;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;

/**
 * The states of one plate between its bites, how fast the bath bit from each to the next, and what further minutes would do.
 *
 * @param states in order of time, one or more
 * @param stretches from the first minute to the first state, and from state to state
 * @param bath as it is now, at the rate found
 * @param rows what further minutes would do, from none on, to the first that prints no darker
 */
public record BiteLog(List<State> states, List<Stretch> stretches, Bite bath, List<Row> rows) {
    /** Further minutes told of, each twice the one before. */
    private static final double FIRST_MINUTES = 2;

    private static final int MOST_ROWS = 8;

    /** Darkening by less than this is none: half of what is seen side by side (from memory, unverified). */
    private static final double NO_DARKER = 0.5;

    /** A stretch whose rate is less sure than this says less than all the time so far. */
    private static final double UNSURE = 0.5;

    public BiteLog {
        states = List.copyOf(states);
        stretches = List.copyOf(stretches);
        rows = List.copyOf(rows);
    }

    /**
     * The plate at one proof.
     *
     * @param minutes in the bath until then, all bites together, 0.1 to 10 000
     * @param depthMicrometres fitted
     * @param standardError of the depth
     * @param readings tones measured on the proof
     * @param misfit root mean square of measured less predicted, L*
     */
    public record State(double minutes, double depthMicrometres, double standardError, int readings, double misfit) {
        public State {
            Bite.SO_FAR.check("minutes bitten so far", minutes);
            Bite.PROVED.check("depth at the proof", depthMicrometres);
        }
    }

    /**
     * The bath between two proofs.
     *
     * @param from minutes
     * @param to minutes
     * @param rate micrometres a minute
     * @param standardError of the rate
     * @param predicted by the workshop's numbers for the same minutes
     */
    public record Stretch(double from, double to, double rate, double standardError, double predicted) {
        /** Rate over what was predicted. */
        public double overPlan() {
            return rate / predicted;
        }

        double overPlanError() {
            return standardError / predicted;
        }
    }

    /**
     * What some minutes more would do.
     *
     * @param moreMinutes from now
     * @param depthMicrometres then
     * @param standardError of that depth
     * @param tones that the plate would print
     * @param light L* of a light tone
     * @param middle L* of a middle tone
     * @param dark L* of a dark tone
     */
    public record Row(
            double moreMinutes,
            double depthMicrometres,
            double standardError,
            BittenTones tones,
            double light,
            double middle,
            double dark) {}

    /** Film coverages of the light, the middle and the dark tone that the rows tell of. */
    public static final List<Double> TONES = List.of(0.1, 0.4, 0.8);

    /** Predicts the plate at any depth of a range. */
    public interface Predicted {
        BittenTones tones(double depthMicrometres);

        /** L* of a film coverage. */
        double lightness(double depthMicrometres, double coverage);

        /** The deepest plate that it knows. */
        double deepestMicrometres();
    }

    /**
     * Reads a log.
     *
     * @param then the workshop with the bath before this plate
     * @param now the same with the bath as it is
     * @param states in order of time
     */
    public static BiteLog of(
            Workshop then, Workshop now, PlanRequest request, List<State> states, Predicted predicted) {
        if (states.isEmpty()) {
            throw Refusal.use("a bite log is empty; it must have at least one proof: add --bitten and --measured");
        }
        Bite planned = Bite.of(then, request);
        List<Stretch> stretches = new ArrayList<>();
        double minutes = 0;
        double depth = 0;
        double error = 0;
        for (State state : states) {
            if (state.minutes() <= minutes) {
                throw Refusal.use("a proof after " + Refusal.plain(state.minutes()) + " min follows one after "
                        + Refusal.plain(minutes)
                        + " min; times must rise: count every proof's minutes from the first minute in the bath");
            }
            double time = state.minutes() - minutes;
            stretches.add(new Stretch(
                    minutes,
                    state.minutes(),
                    (state.depthMicrometres() - depth) / time,
                    StrictMath.hypot(state.standardError(), error) / time,
                    (planned.depthAfter(state.minutes()) - planned.depthAfter(minutes)) / time));
            minutes = state.minutes();
            depth = state.depthMicrometres();
            error = state.standardError();
        }
        Stretch last = stretches.get(stretches.size() - 1);
        boolean sure = last.rate() > 0 && last.standardError() <= UNSURE * last.rate();
        double overPlan = sure ? last.overPlan() : depth / planned.depthAfter(minutes);
        double relative = sure ? last.standardError() / last.rate() : error / depth;
        Bite bath = Bite.of(now, request).faster(overPlan);
        return new BiteLog(states, stretches, bath, rows(states.get(states.size() - 1), bath, relative, predicted));
    }

    private static List<Row> rows(State now, Bite bath, double relative, Predicted predicted) {
        List<Row> rows = new ArrayList<>();
        double darkest = Double.POSITIVE_INFINITY;
        double more = 0;
        while (rows.size() < MOST_ROWS) {
            double deeper = bath.depthAfter(more);
            double depth = now.depthMicrometres() + deeper;
            if (depth > predicted.deepestMicrometres()) {
                break;
            }
            BittenTones tones = predicted.tones(depth);
            rows.add(new Row(
                    more,
                    depth,
                    StrictMath.hypot(now.standardError(), relative * deeper),
                    tones,
                    predicted.lightness(depth, TONES.get(0)),
                    predicted.lightness(depth, TONES.get(1)),
                    predicted.lightness(depth, TONES.get(2))));
            if (tones.darkest() > darkest - NO_DARKER) {
                break;
            }
            darkest = tones.darkest();
            more = more == 0 ? FIRST_MINUTES : 2 * more;
        }
        return rows;
    }

    /** Whether the last row prints no darker than the one before. */
    public boolean endsNoDarker() {
        int last = rows.size() - 1;
        return last > 0
                && rows.get(last).tones().darkest() > rows.get(last - 1).tones().darkest() - NO_DARKER;
    }

    /** How the bath keeps its rate, in a sentence; of one proof, against the workshop's numbers. */
    public String pace() {
        Stretch first = stretches.get(0);
        Stretch last = stretches.get(stretches.size() - 1);
        if (stretches.size() == 1) {
            boolean same = Math.abs(first.overPlan() - 1) <= 2 * first.overPlanError();
            return same
                    ? "the bath bites as the workshop's numbers say, as far as this proof can tell"
                    : "the bath bites at " + percent(first.overPlan()) + " of the rate that the workshop's numbers say";
        }
        double change = last.overPlan() - first.overPlan();
        double error = StrictMath.hypot(last.overPlanError(), first.overPlanError());
        if (change < -2 * error) {
            return "the bath slows by more than its copper explains: " + percent(first.overPlan())
                    + " of the predicted rate at first, " + percent(last.overPlan())
                    + " at last. Look at its temperature and stir up the sediment, or take a fresh bath";
        }
        if (change > 2 * error) {
            return "the bath quickens: " + percent(first.overPlan()) + " of the predicted rate at first, "
                    + percent(last.overPlan()) + " at last. Has it warmed up?";
        }
        return last.rate() < first.rate() - 2 * StrictMath.hypot(last.standardError(), first.standardError())
                ? "the bath slows as the copper in it explains"
                : "the bath keeps its rate, as far as these proofs can tell";
    }

    private static String percent(double share) {
        return Refusal.plain(Math.rint(share * 100)) + " %";
    }
}
