package greyground.fit;

import greyground.chart.CheckPlate;
import greyground.quantity.Refusal;
import greyground.tone.Confidence;
import greyground.tone.IsotonicFit;
import greyground.tone.MonotoneCubic;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * How far a check plate's tones print from where they should.
 *
 * @param lines one for each tone that was measured, from light to dark
 */
public record CheckResult(List<Line> lines) {
    /** Tones this near to the wish are as good as on it: seen apart only side by side (assumed). */
    public static final double TOLERANCE = 2;

    /** A difference this small is not worth a word (about the least that is seen side by side; from memory, unverified). */
    private static final double LEAST_SEEN = 1;

    public CheckResult {
        lines = List.copyOf(lines);
    }

    /**
     * One tone.
     *
     * @param coverage of the film, 0 to 1
     * @param stated L* at which it should print
     * @param readings how many fields were measured
     * @param mean L* of the fields
     * @param spread standard deviation of one field, 0 for a single one
     * @param half95 half the 95 % interval of the mean, by Student's t; infinite for a single reading
     * @param before by how much this lightness would have been missed had the film been made through the uncalibrated response; empty
     *     where that is not known
     */
    public record Line(
            double coverage,
            double stated,
            int readings,
            double mean,
            double spread,
            double half95,
            OptionalDouble before) {
        /** Printed less stated: above 0 prints too light. */
        public double off() {
            return mean - stated;
        }

        /** Whether it is off by more than chance and by enough to see. */
        boolean isOff() {
            return Math.abs(off()) > Math.max(LEAST_SEEN, half95);
        }
    }

    /**
     * Compares.
     *
     * @param check the plate's tones
     * @param patches its measured fields
     */
    public static CheckResult of(CheckPlate check, List<MeasuredPatch> patches) {
        TreeMap<Integer, List<Double>> read = new TreeMap<>();
        for (MeasuredPatch patch : patches) {
            int coverage = (int) Math.round(patch.coverage() * 1000);
            check.lightness(coverage);
            read.computeIfAbsent(coverage, none -> new ArrayList<>()).add(patch.lightness());
        }
        if (read.size() < 2) {
            throw Refusal.use("a check plate has " + read.size()
                    + " measured tones; it must have at least 2: measure more fields");
        }
        MonotoneCubic printed = printed(read);
        List<Line> lines = new ArrayList<>();
        for (CheckPlate.Tone tone : check.tones()) {
            List<Double> values = read.getOrDefault(tone.coveragePerMille(), List.of());
            if (!values.isEmpty()) {
                lines.add(line(tone, values, printed));
            }
        }
        return new CheckResult(lines);
    }

    private static Line line(CheckPlate.Tone tone, List<Double> values, MonotoneCubic printed) {
        int n = values.size();
        double mean = values.stream().mapToDouble(each -> each).sum() / n;
        double squares = values.stream()
                .mapToDouble(each -> (each - mean) * (each - mean))
                .sum();
        double spread = n > 1 ? Math.sqrt(squares / (n - 1)) : 0;
        OptionalDouble before = tone.predictedCoverage()
                .filter(coverage -> coverage >= printed.place(0) && coverage <= printed.place(printed.size() - 1))
                .map(coverage -> OptionalDouble.of(printed.value(coverage) - tone.lightness()))
                .orElse(OptionalDouble.empty());
        return new Line(
                tone.coveragePerMille() / 1000.0,
                tone.lightness(),
                n,
                mean,
                spread,
                n > 1 ? Confidence.halfWidth(spread, n) : Double.POSITIVE_INFINITY,
                before);
    }

    /** What the plate printed at any coverage: the means, fitted so that they only fall, and a curve through them. */
    private static MonotoneCubic printed(Map<Integer, List<Double>> read) {
        double[] coverage =
                read.keySet().stream().mapToDouble(each -> each / 1000.0).toArray();
        double[] means = read.values().stream()
                .mapToDouble(values -> values.stream().mapToDouble(each -> each).sum() / values.size())
                .toArray();
        double[] weights = read.values().stream().mapToDouble(List::size).toArray();
        return MonotoneCubic.fritschCarlson(
                coverage, IsotonicFit.falling(means, weights).fitted());
    }

    /** The tone farthest off. */
    public Line worst() {
        return lines.stream()
                .max((a, b) -> Double.compare(Math.abs(a.off()), Math.abs(b.off())))
                .orElseThrow();
    }

    /** Root mean square of what the tones are off. */
    public double rootMeanSquare() {
        return rootMeanSquare(lines.stream().mapToDouble(Line::off).toArray());
    }

    /** The same before the calibration, over the tones that can tell; empty where none can. */
    public OptionalDouble rootMeanSquareBefore() {
        double[] before = lines.stream()
                .filter(line -> line.before().isPresent())
                .mapToDouble(line -> line.before().getAsDouble())
                .toArray();
        return before.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(rootMeanSquare(before));
    }

    private static double rootMeanSquare(double[] values) {
        return Math.sqrt(Arrays.stream(values).map(value -> value * value).sum() / values.length);
    }

    /** What a printmaker should know, in a sentence. */
    public String verdict() {
        double worst = Math.abs(worst().off());
        long out =
                lines.stream().filter(line -> Math.abs(line.off()) > TOLERANCE).count();
        String first = worst <= LEAST_SEEN
                ? "within 1 L* everywhere"
                : worst <= TOLERANCE
                        ? "within 2 L* everywhere"
                        : out + " of " + lines.size() + " tones are off by more than 2 L*";
        List<String> runs = runs();
        return runs.isEmpty() ? first : first + "; " + String.join("; ", runs);
    }

    /** Neighbouring tones that are off the same way, beyond chance. */
    private List<String> runs() {
        List<String> runs = new ArrayList<>();
        int from = 0;
        while (from < lines.size()) {
            int to = from + 1;
            if (lines.get(from).isOff()) {
                double side = Math.signum(lines.get(from).off());
                while (to < lines.size()
                        && lines.get(to).isOff()
                        && Math.signum(lines.get(to).off()) == side) {
                    to++;
                }
                runs.add(run(from, to));
            }
            from = to;
        }
        return runs;
    }

    private String run(int from, int to) {
        double off = lines.subList(from, to).stream().collect(Collectors.averagingDouble(Line::off));
        int count = to - from;
        String which;
        if (count == lines.size()) {
            which = "all of them print";
        } else if (to == lines.size()) {
            which = count == 1 ? "the darkest prints" : "the darkest " + count + " print";
        } else if (from == 0) {
            which = count == 1 ? "bare paper prints" : "the lightest " + count + " print";
        } else {
            long first = Math.round(lines.get(from).stated());
            long last = Math.round(lines.get(to - 1).stated());
            which = count == 1
                    ? "the tone of L* " + first + " prints"
                    : "those of L* " + first + " to " + last + " print";
        }
        return String.format(Locale.ROOT, "%s %.1f L* too %s", which, Math.abs(off), off > 0 ? "light" : "dark");
    }
}
