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
    /** Shares are believed to lie evenly between none and this (assumed). */
    private static final double USUAL = 0.02;

    /** From there belief falls to none (assumed). */
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

    private static final int PAST_DARKS = 100;

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
     * @param across its place on the plate, for a slant of the wiping, in any unit
     * @param down likewise
     */
    record Seen(int level, double luminance, List<Double> about, double across, double down) {
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
            List<Seen> kept = new ArrayList<>();
            for (int i = 0; i < sound.size(); i++) {
                if (Math.abs(line.residual(i)) <= far) {
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
                double weight = belief(share) * StrictMath.exp((least - sums.misfit(share)) / variance / 2);
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

    private static double belief(double share) {
        return Math.min(1, (MOST - share) / (MOST - USUAL));
    }

    /**
     * Least squares within levels: luminance over the light about it, each level with its own tone, and a slant of the wiping over the plate.
     * Readings of all tones scatter alike in L*, so each weighs by the slope of L*.
     */
    private static final class Sums {
        private final double[] tones;
        private final double[] abouts;
        private final int levels;
        private final double xx;
        private final double xy;
        private final double yy;

        Sums(List<Seen> seen, int side) {
            tones = new double[seen.size()];
            abouts = new double[seen.size()];
            Map<Integer, double[]> means = new TreeMap<>();
            for (Seen one : seen) {
                double[] mean = means.computeIfAbsent(one.level(), any -> new double[5]);
                mean[0] += one.luminance();
                mean[1] += one.about().get(side);
                mean[2] += one.across();
                mean[3] += one.down();
                mean[4]++;
            }
            levels = means.size();
            double[] across = new double[seen.size()];
            double[] down = new double[seen.size()];
            for (int i = 0; i < seen.size(); i++) {
                Seen one = seen.get(i);
                double[] mean = means.getOrDefault(one.level(), new double[] {0, 0, 0, 0, 1});
                double weight = Lightness.slope(Math.max(1e-4, mean[0] / mean[4]));
                tones[i] = weight * (one.luminance() - mean[0] / mean[4]);
                abouts[i] = weight * (one.about().get(side) - mean[1] / mean[4]);
                across[i] = one.across() - mean[2] / mean[4];
                down[i] = one.down() - mean[3] / mean[4];
            }
            takeOut(across, down);
            for (double[] slant : List.of(across, down)) {
                takeOut(slant, tones);
                takeOut(slant, abouts);
            }
            xx = product(abouts, abouts);
            xy = product(abouts, tones);
            yy = product(tones, tones);
        }

        /** Leaves of values what does not follow others. */
        private static void takeOut(double[] others, double[] values) {
            double all = product(others, others);
            double share = all > 0 ? product(others, values) / all : 0;
            for (int i = 0; i < values.length; i++) {
                values[i] -= share * others[i];
            }
        }

        private static double product(double[] one, double[] other) {
            double sum = 0;
            for (int i = 0; i < one.length; i++) {
                sum += one[i] * other[i];
            }
            return sum;
        }

        /** Readings beyond what the levels' own tones, the slant and the share take up. */
        int free() {
            return tones.length - levels - 3;
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

        double residual(int reading) {
            return tones[reading] - slope() * abouts[reading];
        }
    }
}
