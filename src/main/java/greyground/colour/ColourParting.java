package greyground.colour;

import greyground.quantity.Refusal;
import java.util.Arrays;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Parts a colour between two to four plates: how full each must print so that all over one another give it. A colour is seen on the paper that is
 * taken for white; a plate's share is 0 for its lightest tone and 1 for its darkest.
 *
 * <p>Shares are found by Gauss and Newton's steps within 0 and 1, damped where a step leads away (Levenberg and Marquardt, from memory). What no
 * shares print keeps lightness and hue and loses chroma by a knee that begins at {@value #KNEE} of what can be printed there (assumed); what is still
 * out of reach, since the inks don't make that grey, gets the nearest colour, chroma counting {@value #CHROMA_WEIGHT} of lightness and hue
 * (assumed). With four plates the key may print anything between the least and the most with which the others still make the colour.
 */
public final class ColourParting {
    /** A colour is met when it is missed by no more: a twentieth of what is seen. */
    public static final double MET = 0.05;

    /** Plates that a colour can be parted between. */
    public static final int MOST_PLATES = 4;

    private static final double KNEE = 0.9;
    private static final double CHROMA_WEIGHT = 0.7;

    /** The key stays out of tones lighter than the one, and has its whole share in those darker than the other (assumed), so that lights stay clean. */
    private static final double NO_KEY_ABOVE = 70;

    private static final double WHOLE_KEY_BELOW = 40;

    private static final double DIFFERENCE = 1e-6;
    private static final int MOST_STEPS = 60;
    private static final int STARTS_ALONG = 5;
    private static final int HALVINGS = 16;
    private static final int LIGHTNESSES = 33;
    private static final int HUES = 72;
    private static final double GREATEST_CHROMA = 140;
    private static final double CHROMA_STEP = 4;

    private final int plates;
    private final Printing printing;
    private final int key;
    private final double keyShare;
    private final double[][] starts;
    private final double[][] startColours;
    private final double[][] reach;

    /** What shares of plates print over one another. */
    @FunctionalInterface
    public interface Printing {
        /** Colour on the paper, of one share for each plate, 0 to 1; many threads ask at once. */
        Lab of(double[] shares);
    }

    /**
     * Looks how far the inks reach.
     *
     * @param plates 2 to {@link #MOST_PLATES}
     * @param key of four plates, the one that carries grey, from 0
     * @param keyShare share of what it could carry, 0 to 1
     */
    public ColourParting(int plates, Printing printing, int key, double keyShare) {
        Refusal.checkRange("number of inks", plates, 2, MOST_PLATES, "", "draw further plates by hand");
        Refusal.checkRange("key", keyShare, 0, 1, "", "60 % is steadiest where each plate strays by itself");
        this.plates = plates;
        this.printing = printing;
        this.key = plates == MOST_PLATES ? key : -1;
        this.keyShare = keyShare;
        int count = (int) StrictMath.pow(STARTS_ALONG, plates);
        starts = new double[count][plates];
        startColours = new double[count][];
        IntStream.range(0, count).parallel().forEach(i -> {
            int rest = i;
            for (int plate = 0; plate < plates; plate++) {
                starts[i][plate] = (double) (rest % STARTS_ALONG) / (STARTS_ALONG - 1);
                rest /= STARTS_ALONG;
            }
            startColours[i] = values(printing.of(starts[i]));
        });
        reach = smooth(IntStream.range(0, LIGHTNESSES * HUES)
                .parallel()
                .mapToDouble(i -> reach(100.0 / (LIGHTNESSES - 1) * Math.floorDiv(i, HUES), 360.0 / HUES * (i % HUES)))
                .toArray());
    }

    private static double[] values(Lab colour) {
        return new double[] {colour.lightness(), colour.a(), colour.b()};
    }

    /** Shares of the plates for a colour as it is wished, and what they print. */
    public double[] parted(Lab wished) {
        return shares(mapped(wished));
    }

    /** The colour that is aimed at in place of the one wished: as light, of the same hue, its chroma within reach. */
    public Lab mapped(Lab wished) {
        double most = mostChroma(wished.lightness(), wished.hueDegrees());
        return wished.withChroma(knee(wished.chroma(), most, KNEE));
    }

    /**
     * Chroma that is left of one, where the most that can be printed is known.
     *
     * @param share of the most up to which chroma stays as it is
     */
    static double knee(double chroma, double most, double share) {
        double bend = share * most;
        if (chroma <= bend) {
            return chroma;
        }
        double room = most - bend;
        double over = chroma - bend;
        return room <= 0 ? most : bend + room * over / (over + room);
    }

    /** Shares for a colour within reach; for another, of the nearest. */
    double[] shares(Lab wished) {
        return shares(wished, keyShare);
    }

    double[] shares(Lab wished, double keyShare) {
        double[] free = nearest(wished, -1, 0, null);
        if (key < 0 || missed(free, wished) > MET) {
            return free;
        }
        double[] least = end(wished, free, 0);
        double[] most = end(wished, free, 1);
        double share = keyShare
                * Math.max(0, Math.min(1, (NO_KEY_ABOVE - wished.lightness()) / (NO_KEY_ABOVE - WHOLE_KEY_BELOW)));
        double wanted = least[key] + share * (most[key] - least[key]);
        return nearest(wished, key, wanted, share < 0.5 ? least : most);
    }

    /** Least and most that the key may print of a colour within reach. */
    double[] keyRange(Lab wished) {
        double[] free = nearest(wished, -1, 0, null);
        return new double[] {end(wished, free, 0)[key], end(wished, free, 1)[key]};
    }

    private double[] end(Lab wished, double[] met, double end) {
        double[] whole = nearest(wished, key, end, met);
        if (missed(whole, wished) <= MET) {
            return whole;
        }
        double[] good = met;
        double bad = end;
        for (int step = 0; step < HALVINGS; step++) {
            double middle = (good[key] + bad) / 2;
            double[] tried = nearest(wished, key, middle, good);
            if (missed(tried, wished) <= MET / 200) {
                good = tried;
            } else {
                bad = middle;
            }
        }
        return good;
    }

    private double missed(double[] shares, Lab wished) {
        double[] printed = values(printing.of(shares));
        double[] aim = values(wished);
        return StrictMath.sqrt(IntStream.range(0, 3)
                .mapToDouble(i -> (printed[i] - aim[i]) * (printed[i] - aim[i]))
                .sum());
    }

    /** Greatest chroma that can be printed of a lightness and a hue, 0 where none can. */
    double reach(double lightness, double hueDegrees) {
        Lab unit = new Lab(
                lightness,
                StrictMath.cos(StrictMath.toRadians(hueDegrees)),
                StrictMath.sin(StrictMath.toRadians(hueDegrees)));
        double bad = GREATEST_CHROMA;
        double good = -1;
        double[] met = null;
        for (double chroma = GREATEST_CHROMA; chroma >= 0 && good < 0; chroma -= CHROMA_STEP) {
            double[] shares = nearest(unit.withChroma(chroma), -1, 0, null);
            if (missed(shares, unit.withChroma(chroma)) <= MET) {
                good = chroma;
                met = shares;
            } else {
                bad = chroma;
            }
        }
        for (int step = 0; met != null && step < HALVINGS; step++) {
            double middle = (good + bad) / 2;
            double[] shares = nearest(unit.withChroma(middle), -1, 0, met);
            if (missed(shares, unit.withChroma(middle)) <= MET) {
                good = middle;
                met = shares;
            } else {
                bad = middle;
            }
        }
        return Math.max(0, good);
    }

    /** Medians, then means, of each node and those about it: so that neighbouring colours are moved alike. */
    private static double[][] smooth(double[] found) {
        double[] medians = about(found, nine -> {
            Arrays.sort(nine);
            return nine[nine.length / 2];
        });
        double[] means = about(medians, nine -> Arrays.stream(nine).average().orElseThrow());
        double[][] rows = new double[LIGHTNESSES][];
        for (int row = 0; row < LIGHTNESSES; row++) {
            rows[row] = Arrays.copyOfRange(means, row * HUES, (row + 1) * HUES);
        }
        return rows;
    }

    private static double[] about(double[] found, ToDoubleFunction<double[]> of) {
        return IntStream.range(0, found.length)
                .mapToDouble(i -> of.applyAsDouble(IntStream.range(0, 9)
                        .mapToDouble(k -> {
                            int row = Math.max(0, Math.min(LIGHTNESSES - 1, i / HUES + k / 3 - 1));
                            return found[row * HUES + Math.floorMod(i % HUES + k % 3 - 1, HUES)];
                        })
                        .toArray()))
                .toArray();
    }

    private double mostChroma(double lightness, double hueDegrees) {
        double y = Math.max(0, Math.min(1, lightness / 100)) * (LIGHTNESSES - 1);
        int row = Math.min(LIGHTNESSES - 2, (int) y);
        double x = hueDegrees / 360 * HUES;
        int column = (int) x;
        double down = y - row;
        double along = x - column;
        int left = column % HUES;
        int right = (column + 1) % HUES;
        return (1 - down) * ((1 - along) * reach[row][left] + along * reach[row][right])
                + down * ((1 - along) * reach[row + 1][left] + along * reach[row + 1][right]);
    }

    /**
     * Shares whose colour is nearest.
     *
     * @param fixed a plate whose share is given, or -1
     * @param from where to begin; null for the nearest of a coarse grid
     */
    private double[] nearest(Lab wished, int fixed, double share, double @Nullable [] from) {
        double[] aim = values(wished);
        double[] shares = from == null ? starts[nearestStart(aim)].clone() : from.clone();
        if (fixed >= 0) {
            shares[fixed] = share;
        }
        double hue = StrictMath.toRadians(wished.hueDegrees());
        double cosine = StrictMath.cos(hue);
        double sine = StrictMath.sin(hue);
        double damping = 0;
        double[] residual = residual(shares, aim, cosine, sine);
        double cost = square(residual);
        for (int step = 0; step < MOST_STEPS && cost > 1e-14; step++) {
            double[][] slopes = new double[plates][];
            double[] gradient = new double[plates];
            boolean[] still = new boolean[plates];
            for (int plate = 0; plate < plates; plate++) {
                double[] beside = shares.clone();
                double by = shares[plate] > 0.5 ? -DIFFERENCE : DIFFERENCE;
                beside[plate] += by;
                slopes[plate] = residual(beside, aim, cosine, sine);
                for (int i = 0; i < 3; i++) {
                    slopes[plate][i] = (slopes[plate][i] - residual[i]) / by;
                    gradient[plate] += slopes[plate][i] * residual[i];
                }
                still[plate] = plate == fixed
                        || (shares[plate] <= 0 && gradient[plate] >= 0)
                        || (shares[plate] >= 1 && gradient[plate] <= 0);
            }
            boolean better = false;
            double moved = 0;
            for (int attempt = 0; attempt < 12 && !better; attempt++) {
                double[] change = step(slopes, gradient, still, damping);
                double[] tried = shares.clone();
                for (int plate = 0; plate < plates; plate++) {
                    tried[plate] =
                            still[plate] ? shares[plate] : Math.max(0, Math.min(1, shares[plate] - change[plate]));
                    moved = Math.max(attempt == 0 ? moved : 0, Math.abs(tried[plate] - shares[plate]));
                }
                double[] left = residual(tried, aim, cosine, sine);
                double then = square(left);
                if (then < cost) {
                    better = true;
                    shares = tried;
                    residual = left;
                    cost = then;
                    damping = damping < 1e-3 ? 0 : damping / 10;
                } else {
                    damping = damping == 0 ? 1e-3 : damping * 5;
                }
            }
            if (!better || moved < 1e-9) {
                break;
            }
        }
        return shares;
    }

    private int nearestStart(double[] aim) {
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int i = 0; i < startColours.length; i++) {
            double[] colour = startColours[i];
            double far = 0;
            for (int k = 0; k < 3; k++) {
                far += (colour[k] - aim[k]) * (colour[k] - aim[k]);
            }
            if (far < least) {
                least = far;
                best = i;
            }
        }
        return best;
    }

    private double[] residual(double[] shares, double[] aim, double cosine, double sine) {
        Lab printed = printing.of(shares);
        double a = printed.a() - aim[1];
        double b = printed.b() - aim[2];
        return new double[] {
            printed.lightness() - aim[0], CHROMA_WEIGHT * (a * cosine + b * sine), b * cosine - a * sine
        };
    }

    private static double square(double[] residual) {
        return residual[0] * residual[0] + residual[1] * residual[1] + residual[2] * residual[2];
    }

    /** Solves (J'J + damping) x = J'r for the plates that move. */
    private double[] step(double[][] slopes, double[] gradient, boolean[] still, double damping) {
        double[][] rows = new double[plates][plates + 1];
        for (int i = 0; i < plates; i++) {
            if (still[i]) {
                rows[i][i] = 1;
                continue;
            }
            for (int k = 0; k < plates; k++) {
                if (!still[k]) {
                    for (int c = 0; c < 3; c++) {
                        rows[i][k] += slopes[i][c] * slopes[k][c];
                    }
                }
            }
            // Four plates make three numbers of a colour: a little damping always chooses the nearest of many shares.
            rows[i][i] += damping * rows[i][i] + (plates > 3 ? 1e-6 : 1e-12) * (1 + rows[i][i]);
            rows[i][plates] = gradient[i];
        }
        return SmoothSpectrum.solved(rows);
    }
}
