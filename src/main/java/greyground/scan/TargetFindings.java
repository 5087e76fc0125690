package greyground.scan;

import greyground.chart.Target;
import greyground.fit.FitParameter;
import greyground.fit.FitReading;
import greyground.fit.MeasuredDepth;
import greyground.fit.MeasuredPatch;
import greyground.quantity.Refusal;
import greyground.scan.ScanReading.TargetReading;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;

/**
 * What a plate's drawn targets say of the workshop: which bars the pad wiped out, which dots opened, which lands held. Pure functions of
 * readings; each gives a finding or says in words why there is none.
 */
public final class TargetFindings {
    /** A bar's middle is solid if it keeps this share of the way from clear ground to black, in L* (assumed). */
    private static final double SOLID_SHARE = 0.65;

    /** L* by which a field of dots or holes must differ from its ground to be seen (assumed). */
    private static final double SEEN = 1.5;

    /** Differences between the two smallest rows by which it must differ. */
    private static final double SPREADS = 3;

    /** L* by which the smallest dots' ground is darker than clear fields only if they print: more than uneven wiping (assumed). */
    private static final double CLEARLY = 8;

    /** Least L* from clear ground to black for bars to be told apart. */
    private static final double LEAST_RANGE = 15;

    private TargetFindings() {}

    /**
     * A number read, or why there is none.
     *
     * @param reading empty where nothing can be told
     * @param words what was seen, one sentence
     */
    public record Finding(Optional<FitReading> reading, String words) {
        private static Finding none(String words) {
            return new Finding(Optional.empty(), words);
        }
    }

    /** One size of a row and whether it shows what is looked for. */
    private record Step(int micrometres, boolean shows) {}

    /**
     * Radius of the wiping pad: the widest bar whose middle is solid and the narrowest whose middle is pale. Reads the upright bars, or the
     * lying ones where those tell nothing.
     *
     * @param depth of the bite
     * @param etchFactor of the workshop's bath, depth over undercut: bars are bitten wider than they are drawn
     */
    public static Finding barGauge(ScanReading reading, MeasuredDepth depth, double etchFactor) {
        Finding upright = barGauge(reading, depth, etchFactor, true);
        return upright.reading().isPresent()
                        || reading.targets().stream()
                                .noneMatch(one -> one.target() instanceof Target.Bar bar && !bar.upright())
                ? upright
                : barGauge(reading, depth, etchFactor, false);
    }

    private static Finding barGauge(ScanReading reading, MeasuredDepth depth, double etchFactor, boolean upright) {
        List<TargetReading> bars = of(
                reading.targets(),
                target -> target instanceof Target.Bar bar && bar.upright() == upright,
                TargetFindings::width);
        if (bars.size() < 3) {
            return Finding.none(
                    "the bar gauge can't be read: the scan is too coarse for its bars, or the plate has none");
        }
        double clear = clear(reading.patches());
        double black = Math.min(
                bars.stream().mapToDouble(TargetReading::lightness).min().orElse(0),
                reading.patches().stream()
                        .mapToDouble(MeasuredPatch::lightness)
                        .min()
                        .orElse(100));
        if (clear - black < LEAST_RANGE) {
            return Finding.none("the bar gauge can't be read: from clear ground to black are only "
                    + Refusal.plain(Math.rint(clear - black)) + " L*");
        }
        List<Step> steps = bars.stream()
                .map(bar -> new Step(width(bar.target()), clear - bar.lightness() < SOLID_SHARE * (clear - black)))
                .toList();
        return told(
                "the bar gauge",
                steps,
                "printed pale",
                "bar",
                widths -> FitReading.barGauge(widths[0] / 1000.0, widths[1] / 1000.0, depth, etchFactor));
    }

    /**
     * Smallest opening that washes out. Dots too small to open leave their ground as it is; the first row darker than the smallest dots'
     * ground printed, and the smallest dots printed too if theirs is much darker than clear fields.
     */
    public static Finding smallestOpening(List<TargetReading> targets, List<MeasuredPatch> patches) {
        List<TargetReading> dots =
                of(targets, Target.Dots.class::isInstance, target -> ((Target.Dots) target).diameter());
        return dots.size() < 3
                ? Finding.none("the plate has too few rows of dots to tell the smallest opening")
                : told(
                        "dots",
                        held(
                                dots,
                                target -> ((Target.Dots) target).diameter(),
                                clear(patches) - dots.get(0).lightness() > CLEARLY,
                                off -> off),
                        "printed",
                        "row of dots",
                        sizes -> FitReading.target(FitParameter.SMALLEST_OPENING, sizes[0], sizes[1]));
    }

    /**
     * Smallest land that holds. Where the smallest holes left no land, their bands all print alike, as open bite; the first that prints
     * otherwise held: darker, since its lands carry the pad, or lighter, since they print.
     */
    public static Finding smallestLand(List<TargetReading> targets) {
        List<TargetReading> holes =
                of(targets, Target.Holes.class::isInstance, target -> ((Target.Holes) target).diameter());
        return holes.size() < 3
                ? Finding.none("the plate has too few rows of holes to tell the smallest land")
                : told(
                        "holes",
                        held(holes, target -> ((Target.Holes) target).diameter(), false, Math::abs),
                        "left their lands",
                        "row of holes",
                        sizes -> FitReading.target(FitParameter.SMALLEST_LAND, sizes[0], sizes[1]));
    }

    /**
     * Rows that differ from the smallest; once one does, all larger ones do, since a row may print as open bite by chance.
     *
     * @param smallest whether already the smallest does
     * @param off how far a row that is as much darker than the smallest differs from it
     */
    private static List<Step> held(
            List<TargetReading> rows, ToIntFunction<Target> size, boolean smallest, DoubleUnaryOperator off) {
        double ground = rows.get(0).lightness();
        double noise = Math.abs(rows.get(1).lightness() - ground);
        List<Step> steps = new ArrayList<>();
        boolean held = smallest;
        for (TargetReading row : rows) {
            held = held || off.applyAsDouble(ground - row.lightness()) > Math.max(SEEN, SPREADS * noise);
            steps.add(new Step(size.applyAsInt(row.target()), held));
        }
        return steps;
    }

    /** What the two sizes tell between which a row changes, or why there are none. */
    private static Finding told(
            String about, List<Step> steps, String done, String one, Function<int[], FitReading> between) {
        try {
            return bracket(steps)
                    .map(between)
                    .map(reading -> new Finding(Optional.of(reading), about + ": " + reading.how()))
                    .orElseGet(() -> Finding.none(about + ": " + unbracketed(steps, done, one)));
        } catch (Refusal outside) {
            return Finding.none(about + ": " + outside.getMessage());
        }
    }

    private static List<TargetReading> of(
            List<TargetReading> targets, Predicate<Target> wanted, ToIntFunction<Target> size) {
        return targets.stream()
                .filter(one -> wanted.test(one.target()))
                .sorted(Comparator.comparingInt(one -> size.applyAsInt(one.target())))
                .toList();
    }

    /** A bar's shorter side. */
    static int width(Target bar) {
        return Math.min(bar.area().width(), bar.area().height());
    }

    /** The last size that doesn't show and the first that does; none where the row changes more than once or never. */
    private static Optional<int[]> bracket(List<Step> steps) {
        List<int[]> changes = new ArrayList<>();
        for (int i = 1; i < steps.size(); i++) {
            if (steps.get(i).shows() != steps.get(i - 1).shows()) {
                changes.add(
                        new int[] {steps.get(i - 1).micrometres(), steps.get(i).micrometres()});
            }
        }
        return changes.size() == 1 && !steps.get(0).shows() ? Optional.of(changes.get(0)) : Optional.empty();
    }

    private static String unbracketed(List<Step> steps, String done, String one) {
        long shows = steps.stream().filter(Step::shows).count();
        if (shows == steps.size()) {
            return "even the smallest " + one + " that can be read, of "
                    + steps.get(0).micrometres() + " µm, " + done + "; the limit lies below";
        }
        if (shows == 0) {
            return "not even the largest " + one + ", of "
                    + steps.get(steps.size() - 1).micrometres() + " µm, " + done + "; the limit lies above";
        }
        return "small ones " + done + " where larger ones did not: look at the proof with a loupe";
    }

    private static double clear(List<MeasuredPatch> patches) {
        double[] clear = patches.stream()
                .filter(patch -> patch.coverage() == 0)
                .mapToDouble(MeasuredPatch::lightness)
                .sorted()
                .toArray();
        return clear.length > 0
                ? clear[clear.length / 2]
                : patches.stream().mapToDouble(MeasuredPatch::lightness).max().orElse(100);
    }
}
