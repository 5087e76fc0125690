package greyground.colour;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a plate prints in every band, as its tones were measured: one light, that which the ink takes most of, tells which tone it is, and
 * between the tones measured the logarithm of every other band runs straight with that light's. Past the darkest tone it runs on as between bare
 * paper and that.
 */
public final class MeasuredLight implements InkLight {
    /** A tone is darker than the one before by a share of light of more than this (assumed). */
    private static final double LEAST_STEP = 2e-3;

    private final double strongest;
    private final int strongestBand;
    private final double[] places;
    private final double[][] logarithms;

    private MeasuredLight(double strongest, int strongestBand, double[] places, double[][] logarithms) {
        this.strongest = strongest;
        this.strongestBand = strongestBand;
        this.places = places;
        this.logarithms = logarithms;
    }

    /**
     * From measured tones.
     *
     * @param ink as its patch tells it: its strongest band is the light that says which tone it is
     * @param paper spectrum of the bare paper
     * @param tones colours of tones of one plate on it, in any order; bare paper is one of its own accord
     */
    public static MeasuredLight of(InkInBands ink, double[] paper, List<Xyz> tones) {
        int strongestBand = ink.strongestBand();
        List<double[]> nodes = new ArrayList<>();
        for (Xyz tone : tones) {
            double[] shares = shares(paper, tone);
            double[] node = new double[shares.length];
            for (int band = 0; band < node.length; band++) {
                node[band] = StrictMath.log(shares[band]);
            }
            nodes.add(node);
        }
        nodes.sort(Comparator.comparingDouble(node -> -node[strongestBand]));
        List<double[]> falling = new ArrayList<>();
        falling.add(new double[paper.length]);
        for (double[] node : nodes) {
            double[] before = falling.get(falling.size() - 1);
            if (node[strongestBand] < before[strongestBand] - LEAST_STEP) {
                // No band grows lighter as more ink is laid down.
                for (int band = 0; band < node.length; band++) {
                    node[band] = Math.min(node[band], before[band]);
                }
                falling.add(node);
            }
        }
        if (falling.size() < 2) {
            throw Refusal.use("none of the tones measured is darker than the paper: measure the plate's print again");
        }
        return new MeasuredLight(
                ink.strongestPerMicrometre(),
                strongestBand,
                falling.stream().mapToDouble(node -> node[strongestBand]).toArray(),
                falling.toArray(new double[0][]));
    }

    /**
     * The smoothest shares of a colour over paper; of one that no layer has there, those of the nearest that one has: paled towards a grey as light
     * as it, and no lighter than the paper.
     */
    public static double[] shares(double[] paper, Xyz colour) {
        Xyz bare = SmoothSpectrum.colour(paper);
        double light = Math.max(1e-4, Math.min(0.999, colour.y() / bare.y()));
        for (int step = 0; step <= 20; step++) {
            double grey = step / 20.0;
            Xyz paler = new Xyz(
                    mixed(colour.x(), bare.x() * light, grey),
                    mixed(colour.y(), bare.y() * light, grey),
                    mixed(colour.z(), bare.z() * light, grey));
            Optional<double[]> found = SmoothSpectrum.over(paper, paler);
            if (found.isPresent()) {
                return found.get();
            }
        }
        double[] even = new double[paper.length];
        Arrays.fill(even, light);
        return even;
    }

    private static double mixed(double own, double grey, double share) {
        return own + share * (grey - own);
    }

    @Override
    public double[] strengths() {
        return new double[] {strongest};
    }

    /** Logarithm of what a tone's colour lets through in the light that says which it is. */
    public double place(double[] paper, Xyz tone) {
        return Math.min(0, StrictMath.log(shares(paper, tone)[strongestBand]));
    }

    @Override
    public double logarithm(int band, double[] own) {
        double place = Math.min(0, own[0]);
        int last = places.length - 1;
        if (place <= places[last]) {
            return logarithms[last][band] * place / places[last];
        }
        int above = 1;
        while (places[above] > place) {
            above++;
        }
        double share = (place - places[above - 1]) / (places[above] - places[above - 1]);
        return logarithms[above - 1][band] + share * (logarithms[above][band] - logarithms[above - 1][band]);
    }
}
