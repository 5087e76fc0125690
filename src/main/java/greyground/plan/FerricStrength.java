package greyground.plan;

import greyground.quantity.Refusal;

/**
 * A clean ferric chloride solution in all the ways its strength is told. Dissolved copper raises a hydrometer's reading, so a used
 * bath reads stronger than it is (from memory).
 *
 * @param massFraction grams of FeCl3 per gram of solution, 0.16 to 0.44
 * @param kilogramsPerLitre density at 20 C
 */
public record FerricStrength(double massFraction, double kilogramsPerLitre) {
    /** Per cent by mass and kg/L at 20 C: a chemical producer's density table, reproduced at handymath.com. */
    private static final double[] PER_CENT = {16, 20, 24, 28, 30, 32, 36, 40, 44};

    private static final double[] KILOGRAMS_PER_LITRE = {1.143, 1.183, 1.225, 1.269, 1.292, 1.315, 1.364, 1.415, 1.469};

    /**
     * Strength from specific gravity, by straight lines through the table. Specific gravity 60/60 F is taken as kg/L at 20 C, an
     * error below 0.2 %. Range 1.143 to 1.469.
     */
    public static FerricStrength ofSpecificGravity(double specificGravity) {
        int last = KILOGRAMS_PER_LITRE.length - 1;
        Refusal.checkRange(
                "bath's specific gravity",
                specificGravity,
                KILOGRAMS_PER_LITRE[0],
                KILOGRAMS_PER_LITRE[last],
                "",
                "1.38 to 1.41 (40 to 42 degrees Baume) is usual");
        int right = 1;
        while (right < last && KILOGRAMS_PER_LITRE[right] < specificGravity) {
            right++;
        }
        double share = (specificGravity - KILOGRAMS_PER_LITRE[right - 1])
                / (KILOGRAMS_PER_LITRE[right] - KILOGRAMS_PER_LITRE[right - 1]);
        double perCent = PER_CENT[right - 1] + share * (PER_CENT[right] - PER_CENT[right - 1]);
        return new FerricStrength(perCent / 100, specificGravity);
    }

    /**
     * Specific gravity 60/60 F of a liquid heavier than water, SG = 145 / (145 - Be); degrees from 0 to 72. 145 is the American modulus
     * (Roberts and Etherington, Bookbinding and the Conservation of Books, "Baume"); older recipes may mean 144 (old Dutch), 144.3 or 146.78
     * (Gerlach) (CRC Handbook, 51st edition, as quoted; Beringer, Textbook of Assaying).
     */
    static double specificGravity(double degreesBaume) {
        Refusal.checkRange("bath strength", degreesBaume, 0, 72, "degrees Baume", "40 to 42 is usual");
        return 145 / (145 - degreesBaume);
    }

    /** Strength from degrees Baume, modulus 145; 18.2 to 46.2 degrees. */
    public static FerricStrength ofBaume(double degreesBaume) {
        return ofSpecificGravity(specificGravity(degreesBaume));
    }

    public double massPerCent() {
        return massFraction * 100;
    }

    /** Grams of FeCl3 in a litre of solution. */
    public double gramsPerLitre() {
        return massFraction * kilogramsPerLitre * 1000;
    }
}
