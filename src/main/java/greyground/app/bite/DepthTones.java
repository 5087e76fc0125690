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
 * One plate's tones at any depth, from its responses at a few depths and curves over the depth's logarithm between them. The virtual
 * plate's own pixels make tones go down in small steps, so about a depth that matters the depths lie closer.
 */
final class DepthTones implements BiteLog.Predicted, DepthFit.Predicted {
    /** From each depth to the next. */
    private static final double DEEPER = 1.35;

    /** Parts of that about a depth that matters. */
    private static final int PARTS = 4;

    private static final double SHALLOWEST = 2;
    private static final int DEPTHS = 15;

    private final DoubleFunction<VirtualResponse> response;
    private final TreeMap<Double, VirtualResponse> responses = new TreeMap<>();

    /** {@code response} is of the plate bitten to a depth in micrometres. */
    DepthTones(DoubleFunction<VirtualResponse> response, Progress progress) {
        this.response = response;
        for (int i = 0; i < DEPTHS; i++) {
            add(PARTS * i);
            progress.done((i + 1.0) / DEPTHS);
        }
    }

    /** Depths lie on one scale for all proofs, so that what one has computed serves the next, and another day. */
    private void add(int part) {
        double depth = SHALLOWEST * StrictMath.pow(DEEPER, (double) part / PARTS);
        responses.computeIfAbsent(depth, response::apply);
    }

    /** Computes it more closely about a depth, a step either way. */
    void refine(double depthMicrometres, Progress progress) {
        int middle = (int) Math.rint(PARTS * StrictMath.log(depthMicrometres / SHALLOWEST) / StrictMath.log(DEEPER));
        for (int part = -PARTS; part <= PARTS; part++) {
            add(Math.max(0, Math.min(PARTS * (DEPTHS - 1), middle + part)));
            progress.done((part + PARTS + 1.0) / (2 * PARTS + 1));
        }
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
        return responses.lastKey();
    }

    private double between(double depth, ToDoubleFunction<VirtualResponse> measure) {
        double[] values = responses.values().stream().mapToDouble(measure).toArray();
        double[] places =
                responses.keySet().stream().mapToDouble(StrictMath::log).toArray();
        double place = StrictMath.log(Math.max(responses.firstKey(), Math.min(responses.lastKey(), depth)));
        return MonotoneCubic.fritschCarlson(places, values).value(place);
    }
}
