package greyground.app;

import greyground.scan.TargetReading;
import greyground.wedge.FitParameter;
import greyground.wedge.FitReading;
import greyground.wedge.MeasuredDepth;
import greyground.wedge.MeasuredLevel;
import greyground.wedge.MeasuredLines;
import greyground.wedge.MeasuredResponse;
import greyground.wedge.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What a test plate's targets say: line pairs as tones, and the bar gauge as the radius of the wiping pad. */
final class TargetLessons {
    /** One small field of lines is known no better than this, however even it is (assumed). */
    private static final double LEAST_LINE_ERROR = 0.5;

    private TargetLessons() {}

    /** The tone over each period of line pairs, upright and lying ones together. */
    static List<MeasuredLines> lines(List<TargetReading> targets, MeasuredResponse measured) {
        double single = measured.levels().stream()
                .mapToDouble(MeasuredLevel::standardDeviation)
                .average()
                .orElse(LEAST_LINE_ERROR);
        Map<Integer, List<Double>> byPeriod = new TreeMap<>();
        for (TargetReading read : targets) {
            if (read.target() instanceof Target.Lines lines) {
                byPeriod.computeIfAbsent(lines.period(), any -> new ArrayList<>())
                        .add(read.lightness());
            }
        }
        List<MeasuredLines> all = new ArrayList<>();
        byPeriod.forEach((period, read) -> all.add(new MeasuredLines(
                period,
                read.stream().mapToDouble(Double::doubleValue).average().orElse(0),
                Math.max(LEAST_LINE_ERROR, single) / Math.sqrt(read.size()))));
        return all;
    }

    /**
     * The pad's radius by each bar gauge: a bar counts as solid while its middle prints nearer to the plate's darkest tone than to bare
     * paper, and the critical width lies between the widest solid bar and the next, pale one. A gauge without such a pair says nothing.
     */
    static List<FitReading> pad(List<TargetReading> targets, MeasuredResponse measured, MeasuredDepth depth) {
        double half =
                (measured.printableRange().bare() + measured.printableRange().darkest()) / 2;
        List<FitReading> readings = new ArrayList<>();
        for (boolean upright : new boolean[] {true, false}) {
            List<TargetReading> gauge = targets.stream()
                    .filter(read -> read.target() instanceof Target.Bar bar && bar.upright() == upright)
                    .sorted(Comparator.comparingInt(read -> width(read.target())))
                    .toList();
            pad(gauge, half, depth).ifPresent(readings::add);
        }
        return readings;
    }

    private static Optional<FitReading> pad(List<TargetReading> gauge, double half, MeasuredDepth depth) {
        int pale = gauge.size();
        while (pale > 0 && gauge.get(pale - 1).lightness() > half) {
            pale--;
        }
        if (pale == 0 || pale == gauge.size()) {
            return Optional.empty();
        }
        double solid = width(gauge.get(pale - 1).target()) / 1000.0;
        double open = width(gauge.get(pale).target()) / 1000.0;
        double radius = solid * open / (8 * depth.micrometres() / 1000);
        return radius < FitParameter.PAD_RADIUS.least() || radius > FitParameter.PAD_RADIUS.most()
                ? Optional.empty()
                : Optional.of(FitReading.barGauge(solid, open, depth));
    }

    private static int width(Target target) {
        return target instanceof Target.Bar bar && !bar.upright()
                ? target.area().height()
                : target.area().width();
    }
}
