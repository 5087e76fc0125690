package greyground.colour;

import greyground.quantity.Refusal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * What several plates print over one another, from what each prints alone, band by band.
 *
 * <p>Where grains are independent and inks transparent, the mean of the product of their films is the product of the means, whatever light
 * spread and however uneven the films: paper times each plate's own factor, above the light that the surface reflects,
 * {@code R = s + (P - s) prod (R_i - s) / (P - s)}. It is the same as Neugebauer 1937 with the shares of Demichel 1924 and the light spread of Yule
 * and Nielsen 1951 (both from memory) where primaries are products. Overprints that were measured, or whose upper ink the lower one does not
 * wholly take on, take the place of products by that sum.
 *
 * <p>Spectra are arrays of one number a band, all of one length; nobody changes one. Safe for many threads.
 */
public final class InksInRegister {
    /** Plates over one another; 2 to the N primaries are reckoned with. */
    public static final int MOST_PLATES = 6;

    /** A plate that takes so little of a band says nothing about its share there. */
    private static final double NO_LIGHT_TAKEN = 1e-6;

    private final double[] paper;
    private final double[] surface;
    private final double opticalGain;
    private final List<double[]> full;
    private final Map<Integer, double[]> primaries;

    /**
     * Inks of which no overprint was measured.
     *
     * @param paper light of the bare sheet, above 0
     * @param surface light that comes from the ink's surface whatever lies below, 0 or more and below every colour printed
     */
    public InksInRegister(double[] paper, double[] surface) {
        this(paper, surface, 1, List.of(), Map.of());
    }

    private InksInRegister(
            double[] paper,
            double[] surface,
            double opticalGain,
            List<double[]> full,
            Map<Integer, double[]> primaries) {
        this.paper = paper;
        this.surface = surface;
        this.opticalGain = opticalGain;
        this.full = full;
        this.primaries = primaries;
    }

    /**
     * The same with measured overprints. One that was not measured is the product, put right by what was measured of its pairs (assumed).
     *
     * @param opticalGain n of the paper, 1 to 4
     * @param alone each plate's full tone by itself, 1 to {@link #MOST_PLATES} of them
     * @param measured full tones over one another, by the bits of the plates in them, plate 0 the lowest; two plates and more
     */
    public InksInRegister withOverprints(double opticalGain, List<double[]> alone, Map<Integer, double[]> measured) {
        return withOverprints(opticalGain, alone, measured, Acceptance.WHOLE);
    }

    /**
     * The same where wet ink takes on only a share of what is printed over it, as far as that was not measured.
     *
     * @param acceptance of the plates' inks, by the same bits
     */
    public InksInRegister withOverprints(
            double opticalGain, List<double[]> alone, Map<Integer, double[]> measured, Acceptance acceptance) {
        Refusal.checkRange("number of plates", alone.size(), 1, MOST_PLATES, "", "print the rest by themselves");
        Map<Integer, double[]> all = new TreeMap<>();
        for (int plates = 0; plates < 1 << alone.size(); plates++) {
            double[] known = measured.get(plates);
            all.put(
                    plates,
                    known != null && Integer.bitCount(plates) > 1
                            ? known
                            : corrected(plates, alone, measured, acceptance));
        }
        return new InksInRegister(paper, surface, opticalGain, List.copyOf(alone), all);
    }

    private double[] corrected(
            int plates, List<double[]> alone, Map<Integer, double[]> measured, Acceptance acceptance) {
        double[] light = product(plates, alone, acceptance);
        measured.forEach((pair, seen) -> {
            if (Integer.bitCount(pair) == 2 && (pair & plates) == pair) {
                double[] foretold = product(pair, alone, acceptance);
                for (int band = 0; band < light.length; band++) {
                    light[band] *= seen[band] / foretold[band];
                }
            }
        });
        return light;
    }

    private double[] product(int plates, List<double[]> alone, Acceptance acceptance) {
        double[] light = paper.clone();
        for (int plate = 0; plate < alone.size(); plate++) {
            if ((plates >> plate & 1) != 0) {
                times(light, alone.get(plate), acceptance.share(plates, plate));
            }
        }
        return light;
    }

    private void times(double[] light, double[] own, double stays) {
        for (int band = 0; band < light.length; band++) {
            double below = surface[band];
            double left = (own[band] - below) / (paper[band] - below);
            light[band] =
                    below + (light[band] - below) * (stays == 1 ? left : StrictMath.pow(Math.max(0, left), stays));
        }
    }

    /**
     * Light of a place.
     *
     * @param alone what each plate prints there by itself, in the order of the full tones where overprints were measured
     */
    public double[] print(List<double[]> alone) {
        if (primaries.isEmpty()) {
            return product((1 << alone.size()) - 1, alone, Acceptance.WHOLE);
        }
        double[] light = new double[paper.length];
        double[] shares = new double[alone.size()];
        double[] strongest = new double[alone.size()];
        for (int plate = 0; plate < strongest.length; plate++) {
            strongest[plate] = strongestShare(alone.get(plate), full.get(plate));
        }
        for (int band = 0; band < light.length; band++) {
            for (int plate = 0; plate < shares.length; plate++) {
                double whole = taken(full.get(plate), band);
                shares[plate] = whole < NO_LIGHT_TAKEN ? strongest[plate] : taken(alone.get(plate), band) / whole;
            }
            double root = 0;
            for (Map.Entry<Integer, double[]> primary : primaries.entrySet()) {
                root += share(primary.getKey(), shares) * StrictMath.pow(primary.getValue()[band], 1 / opticalGain);
            }
            light[band] = StrictMath.pow(Math.max(0, root), opticalGain);
        }
        return light;
    }

    private double strongestShare(double[] alone, double[] whole) {
        int strongest = 0;
        for (int band = 1; band < whole.length; band++) {
            strongest = taken(whole, band) > taken(whole, strongest) ? band : strongest;
        }
        return taken(whole, strongest) < NO_LIGHT_TAKEN ? 0 : taken(alone, strongest) / taken(whole, strongest);
    }

    /** 1 less the root of what a plate leaves of the paper's light. */
    private double taken(double[] alone, int band) {
        return 1 - StrictMath.pow(alone[band] / paper[band], 1 / opticalGain);
    }

    /**
     * Share of a place on which just these plates print, where each prints on its share and none heeds the others (Demichel 1924, from memory).
     *
     * @param plates their bits, plate 0 the lowest
     * @param shares of each plate, 0 to 1
     */
    public static double share(int plates, double... shares) {
        double share = 1;
        for (int plate = 0; plate < shares.length; plate++) {
            share *= (plates >> plate & 1) != 0 ? shares[plate] : 1 - shares[plate];
        }
        return share;
    }
}
