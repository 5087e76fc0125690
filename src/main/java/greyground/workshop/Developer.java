package greyground.workshop;

/**
 * The soda bath that washes the soft film out.
 *
 * @param soda which crystals are weighed
 * @param gramsPerLitre of those crystals, 0.5 to 100
 * @param temperatureCelsius of the bath, 5 to 45
 * @param minutes expected in all, 0.1 to 120
 * @param breakpointShare of the whole time at which copper first shows, 0.3 to 0.9
 * @param hardnessMilligramsPerLitre of the water, as calcium carbonate, 0 to 1000
 */
public record Developer(
        Soda soda,
        Figure gramsPerLitre,
        Figure temperatureCelsius,
        Figure minutes,
        Figure breakpointShare,
        Figure hardnessMilligramsPerLitre) {
    /** Sodium carbonate as it is sold, by its water of crystallisation; molar masses in g/mol, from IUPAC atomic weights. */
    public enum Soda {
        ANHYDROUS(105.99),
        MONOHYDRATE(124.00),
        /** Ten molecules of water: washing-soda crystals. */
        DECAHYDRATE(286.14);

        private static final double CHALK_GRAMS_PER_MOLE = 100.09;

        private final double gramsPerMole;

        Soda(double gramsPerMole) {
            this.gramsPerMole = gramsPerMole;
        }

        /** Grams of {@code wanted} that hold as much carbonate as {@code grams} of this. */
        public double equivalentGrams(double grams, Soda wanted) {
            return grams / gramsPerMole * wanted.gramsPerMole;
        }

        /**
         * Share of the carbonate that falls out as scale: one millimole for each millimole of calcium and magnesium. 0 to 1.
         *
         * @param hardnessMilligramsPerLitre as calcium carbonate
         */
        public double hardnessLoss(double gramsPerLitre, double hardnessMilligramsPerLitre) {
            double carbonate = gramsPerLitre / gramsPerMole * 1000;
            return Math.min(1, hardnessMilligramsPerLitre / CHALK_GRAMS_PER_MOLE / carbonate);
        }
    }

    public Developer {
        gramsPerLitre.within("developer.gramsPerLitre", 0.5, 100, "g/L", "10 is usual");
        temperatureCelsius.within("developer.temperatureCelsius", 5, 45, "C", "18 to 22 is usual in a hand tray");
        minutes.within("developer.minutes", 0.1, 120, "min", "3 to 9 is usual in a hand tray");
        breakpointShare.within("developer.breakpointShare", 0.3, 0.9, "", "0.5 to 0.65 is usual");
        hardnessMilligramsPerLitre.within(
                "developer.hardnessMilligramsPerLitre", 0, 1000, "mg/L", "ask your water company");
    }

    /** One per cent of the monohydrate in a hand tray. */
    public static Developer assumed() {
        return new Developer(
                Soda.MONOHYDRATE,
                Figure.assumed(10, "Sedlak, Developing: 1 % sodium carbonate monohydrate"),
                Figure.assumed(20, "common practice: hand tray 18-22 C"),
                Figure.assumed(5, "common practice: hand tray 3-9 min"),
                Figure.assumed(
                        0.6,
                        "a dry-film maker's processing guide: 50-65 %, best 60 %; its footnote advises 50 % where the point is judged by eye"),
                Figure.assumed(200, "from memory: moderately hard tap water, unverified"));
    }
}
