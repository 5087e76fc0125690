package greyground.scan;

import greyground.chart.LevelPatch;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * A scanner's stray light, read off the plate: the same grain prints alike amid dark and amid white (science: {@code R' = (1 - f) R + f
 * Rbar}), so where it reads lighter amid white, light strayed. The plate's darks say it, and with them its dark fields, whose neighbours
 * were shuffled.
 *
 * @param share f, 0 to 0.03, its mean over all that the readings leave likely
 * @param error of it, one standard error
 * @param parts of the share, by how far the light comes
 */
public record Glare(double share, double error, List<Part> parts) {
    /** Shares are believed to lie evenly between none and this (assumed: 0 to 2 % and some room). */
    private static final double MOST = 0.03;

    private static final double STEP = 0.0002;

    /** Middle squares from which light may stray, each as likely (assumed): within the glass, and off the carriage's walls. */
    private static final List<Double> SIDES = List.of(5.0, 10.0, 20.0);

    /** The bath bites openings amid resist otherwise than amid bare copper: error of the share by it (assumed). */
    private static final double BITTEN_ALIKE = 0.002;

    /**
     * How light falls off with distance is believed, not known: error of the share, as a share of it (measured on scatter by exponentials and
     * by a power of the distance: {@code GlareTest}).
     */
    private static final double FALL_OFF = 0.2;

    /** An error up to which taking the share out makes tones much surer: nobody's word leaves 1.15 %. */
    private static final double SURE = 0.0065;

    /** Fields darker than this see light stray; those much past the darks may have bitten open, in tenths of a percent (assumed). */
    private static final int LIGHTEST = 300;

    private static final int PAST_DARKS = 150;

    /** Residuals this many deviations off are spoiled fields (assumed). */
    private static final double FAR = 4;

    private static final int FEWEST_FREE = 6;

    /** Fields of one tone scatter by 0.2 L* at the least (assumed). */
    private static final double LEAST_VARIANCE = 0.04;

    /**
     * What strays from one distance.
     *
     * @param share of the light about a place
     * @param sideMillimetres of the middle one of three squares from which it comes
     */
    record Part(double share, double sideMillimetres) {}

    public Glare {
        parts = List.copyOf(parts);
    }

    /** Light about every place, each part from as far as it comes. */
    StrayLight.Surroundings surroundings(LightMap light, double pixelsPerMillimetre) {
        List<StrayLight.Surroundings> each = parts.stream()
                .map(part -> StrayLight.Surroundings.fallingOff(light, part.sideMillimetres(), pixelsPerMillimetre))
                .toList();
        return (x, y) -> {
            double sum = 0;
            for (int i = 0; i < each.size(); i++) {
                sum += parts.get(i).share() / share * each.get(i).mean(x, y);
            }
            return sum;
        };
    }

    /** Whether it is known well enough to be taken out of the tones. */
    public boolean isSure() {
        return error <= SURE;
    }

    /**
     * A tone in its surroundings.
     *
     * @param level coverage in tenths of a percent: equal ones should print alike
     * @param luminance as read, above 0
     * @param about mean luminance about it for each side
     */
    record Seen(int level, double luminance, List<Double> about) {
        Seen {
            about = List.copyOf(about);
        }
    }

    /** Whether a field's tone is one that shows stray light. */
    static boolean isTelling(TestPlate plate, LevelPatch patch) {
        return patch.coveragePerMille() >= LIGHTEST
                && patch.coveragePerMille() <= 10 * plate.recipe().codePercent() + PAST_DARKS;
    }

    /** The plate's darks; without any, nothing is read. */
    static List<Target.Dark> darks(TestPlate plate) {
        return plate.targets().stream()
                .filter(Target.Dark.class::isInstance)
                .map(Target.Dark.class::cast)
                .toList();
    }

    static List<Double> sides() {
        return SIDES;
    }

    /** What readings say; empty where there are too few. */
    static Optional<Glare> of(List<Seen> seen) {
        List<Seen> sound = seen;
        Sums best = best(sound);
        for (int round = 0; round < 2 && best.free() >= FEWEST_FREE; round++) {
            Sums line = best;
            double far = FAR * Math.sqrt(line.variance());
            List<Double> residuals = line.residuals();
            List<Seen> kept = new ArrayList<>();
            for (int i = 0; i < sound.size(); i++) {
                if (Math.abs(residuals.get(i)) <= far) {
                    kept.add(sound.get(i));
                }
            }
            sound = kept;
            best = best(sound);
        }
        return best.free() < FEWEST_FREE ? Optional.empty() : Optional.of(posterior(sound, best.variance()));
    }

    private static Sums best(List<Seen> seen) {
        Sums best = new Sums(seen, 0);
        for (int side = 1; side < SIDES.size(); side++) {
            Sums other = new Sums(seen, side);
            best = other.misfit(other.slope()) < best.misfit(best.slope()) ? other : best;
        }
        return best;
    }

    /** Mean and deviation over all shares and sides, each weighed by how well it explains the readings. */
    private static Glare posterior(List<Seen> seen, double variance) {
        double all = 0;
        double mean = 0;
        double square = 0;
        double[] means = new double[SIDES.size()];
        Sums best = best(seen);
        double least = best.misfit(best.slope());
        for (int side = 0; side < SIDES.size(); side++) {
            Sums sums = new Sums(seen, side);
            for (double share = 0; share <= MOST; share += STEP) {
                double weight = StrictMath.exp((least - sums.misfit(share)) / variance / 2);
                all += weight;
                means[side] += weight * share;
                mean += weight * share;
                square += weight * share * share;
            }
        }
        List<Part> parts = new ArrayList<>();
        for (int side = 0; side < SIDES.size(); side++) {
            parts.add(new Part(means[side] / all, SIDES.get(side)));
        }
        double share = mean / all;
        double spread = Math.sqrt(Math.max(0, square / all - share * share));
        double shape = StrictMath.hypot(BITTEN_ALIKE, FALL_OFF * share);
        return new Glare(share, StrictMath.hypot(spread, shape), parts);
    }

    /**
     * Least squares within levels: luminance over the light about it, each level with its own tone. Readings of all tones scatter alike in
     * L*, so each weighs by the slope of L*.
     */
    private static final class Sums {
        private final List<Double> tones = new ArrayList<>();
        private final List<Double> abouts = new ArrayList<>();
        private final int levels;
        private double xx;
        private double xy;
        private double yy;

        Sums(List<Seen> seen, int side) {
            Map<Integer, double[]> means = new TreeMap<>();
            for (Seen one : seen) {
                double[] mean = means.computeIfAbsent(one.level(), any -> new double[3]);
                mean[0] += one.luminance();
                mean[1] += one.about().get(side);
                mean[2]++;
            }
            levels = means.size();
            for (Seen one : seen) {
                double[] mean = means.getOrDefault(one.level(), new double[] {0, 0, 1});
                double weight = Lightness.slope(Math.max(1e-4, mean[0] / mean[2]));
                double x = weight * (one.about().get(side) - mean[1] / mean[2]);
                double y = weight * (one.luminance() - mean[0] / mean[2]);
                abouts.add(x);
                tones.add(y);
                xx += x * x;
                xy += x * y;
                yy += y * y;
            }
        }

        /** Readings beyond what the levels' own tones and the slope take up. */
        int free() {
            return tones.size() - levels - 1;
        }

        double slope() {
            return xx > 0 ? Math.max(0, Math.min(MOST, xy / xx)) : 0;
        }

        double misfit(double share) {
            return Math.max(0, yy - 2 * share * xy + share * share * xx);
        }

        /** Of one reading, in squared L*. */
        double variance() {
            return Math.max(LEAST_VARIANCE, misfit(slope()) / Math.max(1, free()));
        }

        List<Double> residuals() {
            List<Double> all = new ArrayList<>();
            for (int i = 0; i < tones.size(); i++) {
                all.add(tones.get(i) - slope() * abouts.get(i));
            }
            return all;
        }
    }
}
