package greyground.app.teach;

import greyground.chart.Target;
import greyground.fit.MeasuredDepth;
import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredLines;
import greyground.fit.MeasuredResponse;
import greyground.scan.ScanReading;
import greyground.scan.TargetFindings;
import greyground.scan.TargetReading;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What a test plate's targets say: line pairs as tones, bars, dots and holes as numbers of their own. */
final class TargetLessons {
    /** One small field of lines is known no better than this, however even it is (assumed). */
    private static final double LEAST_LINE_ERROR = 0.5;

    /** Half the width of an even distribution over its standard deviation. */
    private static final double HALF_OF_EVEN = Math.sqrt(3);

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
     * What bars, dots and holes say, in the order: pad, smallest opening, smallest land.
     *
     * @param etchFactor of the workshop's bath
     * @param pitchMicrometres of the film: targets finer than its pixels are drawn coarser than they are called
     */
    static List<TargetFindings.Finding> findings(
            ScanReading reading, MeasuredDepth depth, double etchFactor, boolean bitten, double pitchMicrometres) {
        List<TargetFindings.Finding> all = new ArrayList<>();
        if (bitten) {
            all.add(TargetFindings.barGauge(reading, depth, etchFactor));
        }
        all.add(drawn(TargetFindings.smallestOpening(reading.targets(), reading.patches()), pitchMicrometres));
        all.add(drawn(TargetFindings.smallestLand(reading.targets()), pitchMicrometres));
        return all;
    }

    private static TargetFindings.Finding drawn(TargetFindings.Finding finding, double pitchMicrometres) {
        boolean finer = finding.reading().isPresent()
                && finding.reading().get().value()
                                - HALF_OF_EVEN * finding.reading().get().standardError()
                        < pitchMicrometres;
        return finer
                ? new TargetFindings.Finding(
                        Optional.empty(), finding.words() + "; finer than the film's pixels, so it says nothing sure")
                : finding;
    }
}
