package greyground.plate;

import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Softening;
import greyground.quantity.Refusal;

/**
 * The ink and how it lands on the paper.
 *
 * @param greatestDensity D-infinity, density of a very thick film above the paper, 0.3 to 3
 * @param densityPerMicrometre m, how soon a film is dense, 0.01 to 2
 * @param transferFraction share of the ink in the wells that goes to the paper, 0.05 to 1
 * @param spreadMicrometres how far a printed edge creeps outward, 0 to 100
 */
public record Ink(
        double greatestDensity, double densityPerMicrometre, double transferFraction, double spreadMicrometres) {
    // Films thinner than this darken paper by less than 0.01 D at any usual m: they are no part of a printed edge.
    private static final float NO_INK_MICROMETRES = 0.02f;

    public Ink {
        Refusal.checkRange("greatest ink density", greatestDensity, 0.3, 3, "", "1.4 to 1.9 on uncoated cotton paper");
        Refusal.checkRange("ink density per µm", densityPerMicrometre, 0.01, 2, "per µm", "0.1 to 0.3 is usual");
        Refusal.checkRange("ink transfer", transferFraction, 0.05, 1, "", "0.6 to 0.95 is usual");
        Refusal.checkRange("ink spread", spreadMicrometres, 0, 100, "µm", "8 to 18 µm on damp cotton paper");
    }

    /** Density of a film above the paper, {@code Dinf (1 - exp(-m y))} (Tollenaar and Ernst 1961/62, from memory). */
    public double density(double filmMicrometres) {
        return greatestDensity * (1 - StrictMath.exp(-densityPerMicrometre * filmMicrometres));
    }

    /**
     * Ink on the paper: what the wells give, squeezed out to {@code spreadMicrometres} past their edges and levelled over
     * about that distance within the printed area. No ink is lost or made: each place gives its ink to the printed places
     * round it, in shares that sum to one.
     *
     * @param held ink film in the plate, in micrometres
     * @return ink film on the paper
     */
    float[] onPaper(float[] held, Grid grid) {
        float[] film = new float[held.length];
        boolean[] inked = new boolean[held.length];
        for (int i = 0; i < held.length; i++) {
            film[i] = (float) (transferFraction * held[i]);
            inked[i] = film[i] >= NO_INK_MICROMETRES;
        }
        if (spreadMicrometres < grid.pitchMicrometres() / 2) {
            return film;
        }
        float[] beyond = Distance.micrometres(inked, true, grid, spreadMicrometres + grid.pitchMicrometres());
        // A pixel that the printed edge crosses counts by the share of it inside.
        float[] printed = new float[held.length];
        for (int i = 0; i < held.length; i++) {
            double within = (spreadMicrometres - beyond[i]) / grid.pitchMicrometres() + 0.5;
            printed[i] = (float) Math.max(0, Math.min(1, within));
        }
        float[] share = Softening.gaussian(printed, grid, spreadMicrometres);
        for (int i = 0; i < held.length; i++) {
            film[i] = printed[i] > 0 ? film[i] / share[i] : 0;
        }
        float[] levelled = Softening.gaussian(film, grid, spreadMicrometres);
        for (int i = 0; i < held.length; i++) {
            levelled[i] *= printed[i];
        }
        return levelled;
    }

    /** The same ink, blacker or paler in a very thick film. */
    public Ink withGreatestDensity(double other) {
        return new Ink(other, densityPerMicrometre, transferFraction, spreadMicrometres);
    }

    /** The same ink, dense sooner or later. */
    public Ink withDensityPerMicrometre(double other) {
        return new Ink(greatestDensity, other, transferFraction, spreadMicrometres);
    }
}
