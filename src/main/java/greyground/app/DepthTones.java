package greyground.app;

import greyground.plan.BiteLog;
import greyground.plan.BittenTones;
import greyground.plate.VirtualResponse;
import greyground.raster.Progress;
import greyground.tone.MonotoneCubic;
import greyground.wedge.DepthFit;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;

/** One plate's tones at any depth, from its responses at a few depths and curves over the depth's logarithm between them. */
final class DepthTones implements BiteLog.Foretold, DepthFit.Foretold {
    /** From each depth to the next; at most 0.4 L* is lost between them (measured on the usual grain). */
    private static final double DEEPER = 1.35;

    private static final double SHALLOWEST = 2;
    private static final int DEPTHS = 15;

    private final double[] depths = new double[DEPTHS];
    private final double[] places = new double[DEPTHS];
    private final List<VirtualResponse> responses = new ArrayList<>();

    /**
     * Computes the plate.
     *
     * @param response of the plate bitten to a depth in micrometres
     */
    DepthTones(DoubleFunction<VirtualResponse> response, Progress progress) {
        double depth = SHALLOWEST;
        for (int i = 0; i < DEPTHS; i++) {
            depths[i] = depth;
            places[i] = StrictMath.log(depth);
            responses.add(response.apply(depth));
            progress.done((i + 1.0) / DEPTHS);
            depth *= DEEPER;
        }
    }

    @Override
    public double[] depths() {
        return depths.clone();
    }

    @Override
    public double lightness(int depth, double coverage) {
        return responses.get(depth).lightness(coverage);
    }

    @Override
    public double lightness(double depthMicrometres, double coverage) {
        return between(depthMicrometres, response -> response.lightness(coverage));
    }

    @Override
    public BittenTones tones(double depthMicrometres) {
        return new BittenTones(
                between(depthMicrometres, response -> response.printableRange().bare()),
                between(depthMicrometres, response -> response.printableRange().lightest()),
                between(depthMicrometres, response -> response.printableRange().darkest()),
                between(depthMicrometres, VirtualResponse::turningPoint));
    }

    @Override
    public double deepestMicrometres() {
        return depths[DEPTHS - 1];
    }

    private double between(double depth, ToDoubleFunction<VirtualResponse> measure) {
        double[] values = responses.stream().mapToDouble(measure).toArray();
        double place = StrictMath.log(Math.max(depths[0], Math.min(depths[DEPTHS - 1], depth)));
        return MonotoneCubic.fritschCarlson(places, values)
                .value(Math.max(places[0], Math.min(places[DEPTHS - 1], place)));
    }
}
