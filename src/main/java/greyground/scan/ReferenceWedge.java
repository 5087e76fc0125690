package greyground.scan;

import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.tone.IsotonicFit;
import greyground.tone.MonotoneCubic;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A scanner taught to be a densitometer by patches of known density on the same scan: density over the logarithm of the signal, first made
 * to fall wherever it should (pool adjacent violators), then a monotone cubic with the slopes of Fritsch and Butland. Beyond its darkest
 * and lightest patch the curve goes on as a true scanner's would, one density to a tenth of the signal.
 */
final class ReferenceWedge {
    private static final int LEAST = 4;
    private static final double LEAST_RANGE = 0.3;

    /** Pooling of more than this share of the readings puts them in doubt (common practice). */
    private static final double MOST_POOLED = 0.34;

    private final double[] logs;
    private final MonotoneCubic curve;

    private ReferenceWedge(double[] logs, MonotoneCubic curve) {
        this.logs = logs;
        this.curve = curve;
    }

    /** Reads the patches on a scan. */
    static ReferenceWedge of(GreyPlane scan, List<ScanChoices.Reference> references, StrayLight light) {
        List<double[]> readings = new ArrayList<>();
        for (ScanChoices.Reference one : references) {
            double half = one.sidePixels() / 2;
            int left = (int) Math.round(one.xPixels() - half);
            int top = (int) Math.round(one.yPixels() - half);
            int right = (int) Math.round(one.xPixels() + half);
            int bottom = (int) Math.round(one.yPixels() + half);
            if (left < 0
                    || top < 0
                    || right > scan.width()
                    || bottom > scan.height()
                    || right <= left
                    || bottom <= top) {
                throw Refusal.use("the wedge's patch of density " + Refusal.plain(one.density()) + " reaches from "
                        + left
                        + "," + top + " to " + right + "," + bottom + ", but the scan has " + scan.width() + " x "
                        + scan.height() + " pixels: give the middle and side of each patch in pixels");
            }
            LightMap part = LightMap.part(scan, left, top, right, bottom);
            double sum = 0;
            for (int y = 0; y < part.height(); y++) {
                for (int x = 0; x < part.width(); x++) {
                    sum += part.value(x, y);
                }
            }
            double mean = light.cleared(sum / part.width() / part.height(), one.xPixels(), one.yPixels());
            readings.add(new double[] {mean, one.density()});
        }
        return of(readings);
    }

    /**
     * Through readings.
     *
     * @param readings signal above 0 and density of each patch
     */
    static ReferenceWedge of(List<double[]> readings) {
        if (readings.size() < LEAST) {
            throw Refusal.use("the reflection wedge has " + readings.size() + " patches; it needs " + LEAST
                    + " or more of known density: give more patches, or none to take paper white alone");
        }
        List<double[]> sorted = readings.stream()
                .sorted(Comparator.comparingDouble((double[] r) -> r[1]))
                .toList();
        for (double[] reading : sorted) {
            if (!(reading[0] > 0)) {
                throw Refusal.failure("the wedge's patch of density " + Refusal.plain(reading[1])
                        + " shows no light at all on the scan: give its place again, or leave it out");
            }
        }
        double range = sorted.get(sorted.size() - 1)[1] - sorted.get(0)[1];
        Refusal.checkRange(
                "range of the reflection wedge", range, LEAST_RANGE, 4, "", "take patches from paper to black");
        double[] falling = new double[sorted.size()];
        double[] weights = new double[falling.length];
        for (int i = 0; i < falling.length; i++) {
            falling[i] = StrictMath.log10(sorted.get(i)[0]);
            weights[i] = 1;
        }
        IsotonicFit fit = IsotonicFit.falling(falling, weights);
        if (fit.longestPooledShare() > MOST_POOLED) {
            throw Refusal.failure(
                    "the reflection wedge does not get darker from patch to patch: signal and density disagree"
                            + " over " + Math.round(100 * fit.longestPooledShare())
                            + " % of it; check the places and densities, and scan without automatic corrections");
        }
        double[] fitted = fit.fitted();
        List<double[]> points = new ArrayList<>();
        for (int i = fitted.length - 1; i >= 0; i--) {
            double density = sorted.get(i)[1];
            double[] last = points.isEmpty() ? null : points.get(points.size() - 1);
            if (last != null && fitted[i] - last[0] < 1e-9) {
                // Patches pooled to one signal stand at their mean density.
                last[1] = (last[1] * last[2] + density) / (last[2] + 1);
                last[2]++;
            } else {
                points.add(new double[] {fitted[i], density, 1});
            }
        }
        double[] x = points.stream().mapToDouble(p -> p[0]).toArray();
        double[] y = points.stream().mapToDouble(p -> p[1]).toArray();
        return new ReferenceWedge(x, MonotoneCubic.fritschButland(x, y));
    }

    /** Absolute density of a signal. */
    double density(double signal) {
        double log = StrictMath.log10(Math.max(1e-6, signal));
        int last = logs.length - 1;
        if (log <= logs[0]) {
            return curve.pointValue(0) + logs[0] - log;
        }
        return log >= logs[last] ? curve.pointValue(last) + logs[last] - log : curve.value(log);
    }

    /** Whether a signal lies between the wedge's patches. */
    boolean holds(double signal) {
        double log = StrictMath.log10(Math.max(1e-6, signal));
        return log >= logs[0] && log <= logs[logs.length - 1];
    }
}
