package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Art to film: for each 16-bit code of linear luminance, the film coverage in 1/65 535.
 *
 * <p>A darker grey never gets less coverage; the constructor checks it.
 */
public final class ToneCurve {
    /** Number of grey codes. */
    public static final int CODES = 65_536;

    /** Full coverage. */
    public static final int SOLID = 65_535;

    private final char[] coverage;
    private final String name;

    /**
     * Wraps a table.
     *
     * @param coverageByGrey 65 536 coverages, indexed by linear luminance, never rising
     */
    public ToneCurve(String name, char[] coverageByGrey) {
        if (coverageByGrey.length != CODES) {
            throw Refusal.use("a tone curve has " + coverageByGrey.length + " entries; it must have " + CODES);
        }
        for (int grey = 1; grey < CODES; grey++) {
            if (coverageByGrey[grey] > coverageByGrey[grey - 1]) {
                throw Refusal.use("the tone curve \"" + name + "\" gives grey " + grey + " more black than grey "
                        + (grey - 1) + "; a lighter grey must never get more");
            }
        }
        this.name = name;
        this.coverage = coverageByGrey.clone();
    }

    /** Coverage in 1/65 535 for a grey code 0..65 535. */
    public int coverage(int grey) {
        return coverage[grey];
    }

    /** A copy of the whole table, for inner loops. */
    public char[] table() {
        return coverage.clone();
    }

    /** The name printed on the film. */
    public String name() {
        return name;
    }
}
