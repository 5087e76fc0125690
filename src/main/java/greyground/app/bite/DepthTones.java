package greyground.app.bite;

import greyground.fit.DepthFit;
import greyground.plan.BiteLog;
import greyground.plan.BittenTones;
import greyground.plate.VirtualResponse;
import greyground.raster.Progress;
import greyground.tone.MonotoneCubic;
import java.util.List;
import java.util.TreeMap;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;

/**
 * One plate's tones at any depth, from its responses at a few depths and curves over the depth's logarithm between them. A depth is
 * computed when it is first asked about, with the two on either side that its curve leans on; the virtual plate's own pixels make tones
 * go down in small steps, so about a depth that matters the depths lie closer.
 */
final class DepthTones implements BiteLog.Predicted, DepthFit.Predicted {
    /** From each depth to the next. */
    private static final double DEEPER = 1.35;

    /** Parts of that about a depth that matters. */
    private static final int PARTS = 4;

    /** So many of them either way; with steps twice as wide its own pixels threw a fit off by more than its error (measured at 13 µm). */
    private static final int CLOSE = 3;

    private static final double SHALLOWEST = 2;
    private static final int LAST = 14;

    /** A fit farther off than this, in L*, may have missed a better one: every depth is tried then (assumed). */
    private static final double POOR = 3;

    /** Share of what is left that one more response is said to be: how many there will be nobody knows. */
    private static final double EACH = 0.1;

    private final DoubleFunction<VirtualResponse> response;
    private final Progress progress;
    private final TreeMap<Double, VirtualResponse> responses = new TreeMap<>();

    /** {@code response} is of the plate bitten to a depth in micrometres. */
    DepthTones(DoubleFunction<VirtualResponse> response, Progress progress) {
        this.response = response;
        this.progress = progress;
    }

    /** Depths lie on one scale for all proofs, so that what one has computed serves the next, and another day. */
    private static double depth(int part) {
        return SHALLOWEST * StrictMath.pow(DEEPER, (double) part / PARTS);
    }

    private static double part(double depthMicrometres) {
        return PARTS * StrictMath.log(depthMicrometres / SHALLOWEST) / StrictMath.log(DEEPER);
    }

    private static int within(int step) {
        return Math.max(0, Math.min(LAST, step));
    }

    private VirtualResponse at(int part) {
        return responses.computeIfAbsent(depth(Math.max(0, Math.min(PARTS * LAST, part))), depth -> {
            VirtualResponse made = response.apply(depth);
            progress.done(1 - StrictMath.pow(1 - EACH, responses.size() + 1.0));
            return made;
        });
    }

    private void steps(int from, int to) {
        for (int step = within(from); step <= within(to); step++) {
            at(PARTS * step);
        }
    }

    /**
     * The depth that readings show.
     *
     * @param aboutMicrometres where to begin looking
     */
    DepthFit fit(List<DepthFit.Reading> readings, double aboutMicrometres) {
        int best = within((int) Math.rint(part(aboutMicrometres) / PARTS));
        for (int next = nearest(readings, best); next != best; next = nearest(readings, best)) {
            best = next;
        }
        steps(best - 2, best + 2);
        if (best == 0 || best == LAST) {
            steps(0, LAST);
        }
        DepthFit found = DepthFit.of(readings, this);
        if (found.misfit() > POOR) {
            steps(0, LAST);
            found = DepthFit.of(readings, this);
        }
        int middle = (int) Math.rint(part(found.depthMicrometres()));
        for (int part = middle - CLOSE; part <= middle + CLOSE; part++) {
            at(part);
        }
        return DepthFit.of(readings, this);
    }

    /** Which of a step and its neighbours prints nearest. */
    private int nearest(List<DepthFit.Reading> readings, int step) {
        int best = step;
        for (int each = within(step - 1); each <= within(step + 1); each++) {
            best = off(readings, each) < off(readings, best) ? each : best;
        }
        return best;
    }

    private double off(List<DepthFit.Reading> readings, int step) {
        VirtualResponse known = at(PARTS * step);
        return readings.stream()
                .mapToDouble(reading ->
                        (reading.lightness() - known.lightness(reading.coverage())) / reading.standardError())
                .map(off -> off * off)
                .sum();
    }

    @Override
    public double[] depths() {
        return responses.keySet().stream().mapToDouble(each -> each).toArray();
    }

    @Override
    public double lightness(int depth, double coverage) {
        return List.copyOf(responses.values()).get(depth).lightness(coverage);
    }

    @Override
    public double lightness(double depthMicrometres, double coverage) {
        return between(depthMicrometres, each -> each.lightness(coverage));
    }

    @Override
    public BittenTones tones(double depthMicrometres) {
        return new BittenTones(
                between(depthMicrometres, each -> each.printableRange().bare()),
                between(depthMicrometres, each -> each.printableRange().lightest()),
                between(depthMicrometres, each -> each.printableRange().darkest()),
                between(depthMicrometres, VirtualResponse::turningPoint));
    }

    @Override
    public double deepestMicrometres() {
        return depth(PARTS * LAST);
    }

    private double between(double depth, ToDoubleFunction<VirtualResponse> measure) {
        double bounded = Math.max(SHALLOWEST, Math.min(deepestMicrometres(), depth));
        int below = (int) Math.floor(part(bounded) / PARTS);
        steps(below - 1, below + 2);
        double[] values = responses.values().stream().mapToDouble(measure).toArray();
        double[] places =
                responses.keySet().stream().mapToDouble(StrictMath::log).toArray();
        return MonotoneCubic.fritschCarlson(places, values).value(StrictMath.log(bounded));
    }
}
