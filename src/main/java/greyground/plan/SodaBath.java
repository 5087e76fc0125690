package greyground.plan;

import greyground.workshop.Developer.Soda;

/**
 * The developing bath: soda by its water of crystallisation, what hard water takes of it, and the breakpoint rule.
 *
 * <p>Molar masses in g/mol, from IUPAC atomic weights: Na2CO3 105.99, with one water 124.00, with ten 286.14; CaCO3 100.09.
 */
public final class SodaBath {
    private static final double ANHYDROUS_GRAMS_PER_MOLE = 105.99;
    private static final double CHALK_GRAMS_PER_MOLE = 100.09;

    private SodaBath() {}

    private static double gramsPerMole(Soda soda) {
        return switch (soda) {
            case ANHYDROUS -> ANHYDROUS_GRAMS_PER_MOLE;
            case MONOHYDRATE -> 124.00;
            case DECAHYDRATE -> 286.14;
        };
    }

    /** Grams of {@code wanted} that hold as much carbonate as {@code grams} of {@code given}. */
    public static double equivalentGrams(double grams, Soda given, Soda wanted) {
        return grams / gramsPerMole(given) * gramsPerMole(wanted);
    }

    /**
     * Share of the carbonate that falls out as scale: one millimole for each millimole of calcium and magnesium. 0 to 1.
     *
     * @param hardnessMilligramsPerLitre as calcium carbonate
     */
    public static double hardnessLoss(double gramsPerLitre, Soda soda, double hardnessMilligramsPerLitre) {
        double carbonate = gramsPerLitre / gramsPerMole(soda) * 1000;
        return Math.min(1, hardnessMilligramsPerLitre / CHALK_GRAMS_PER_MOLE / carbonate);
    }
}
