package greyground.plan;

import greyground.quantity.Refusal;

/**
 * Degrees Baume for liquids heavier than water and specific gravity at 60 F: SG = M / (M - Be).
 *
 * @param modulus M: 145 is the American one (Roberts and Etherington, Bookbinding and the Conservation of Books, "Baume"); older
 *     recipes may mean 144 (old Dutch), 144.3 or 146.78 (Gerlach) (CRC Handbook, 51st edition, as quoted; Beringer, Textbook of
 *     Assaying)
 */
public record Hydrometer(double modulus) {
    public Hydrometer {
        Refusal.checkRange("Baume modulus", modulus, 140, 150, "", "145 unless the recipe is old");
    }

    /** The usual scale, modulus 145. */
    public static Hydrometer usual() {
        return new Hydrometer(145);
    }

    /** Specific gravity 60/60 F; degrees from 0 to 72. */
    public double specificGravity(double degreesBaume) {
        Refusal.checkRange("bath strength", degreesBaume, 0, 72, "degrees Baume", "40 to 42 is usual");
        return modulus / (modulus - degreesBaume);
    }
}
