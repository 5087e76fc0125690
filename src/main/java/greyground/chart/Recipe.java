package greyground.chart;

import greyground.quantity.Refusal;
import greyground.quantity.Size;

/**
 * What decides every place on a test plate: from the same recipe the same layout follows.
 *
 * @param kind what the plate is for
 * @param widthMicrometres of the copper, at most 600 mm
 * @param heightMicrometres of the copper, at most 600 mm
 * @param bevelMicrometres 0 to 6000
 * @param seed chooses the shuffle, 0 to {@value #MOST_SEED}
 * @param codePercent coverage of the dark modules of the corner codes, {@value #LEAST_CODE} to {@value #MOST_CODE}: grain that
 *     bites and wipes like a dark tone, where open black would be wiped out
 * @param codeModuleMicrometres side of a module, {@value #LEAST_MODULE} to {@value #MOST_MODULE} in steps of {@value #MODULE_STEP}
 */
public record Recipe(
        Kind kind,
        int widthMicrometres,
        int heightMicrometres,
        int bevelMicrometres,
        int seed,
        int codePercent,
        int codeModuleMicrometres) {
    /** Four digits to the base 36. */
    public static final int MOST_SEED = 36 * 36 * 36 * 36 - 1;

    /** A code any lighter is too weak to read on toned paper (assumed). */
    public static final int LEAST_CODE = 40;

    /** A code any darker would be open bite in a shop that bites deeper than assumed (assumed). */
    public static final int MOST_CODE = 95;

    /** A module as small is read surely from a scan of 300 ppi (measured on simulated scans; 0.34 mm still was). */
    public static final int LEAST_MODULE = 500;

    /** The widest module. */
    public static final int MOST_MODULE = 1600;

    /** From one module to the next wider. */
    public static final int MODULE_STEP = 100;

    private static final int MODULE = 600;
    private static final double SMALL_SIDE_MILLIMETRES = 100;

    /** A module this many dots wide reads; at 1.65 some codes did, at 1.25 none (measured on films at 288 ppi). */
    private static final double DOTS_PER_MODULE = 2;

    private static final double MOST_SIDE_MILLIMETRES = 600;

    /** What a test plate is for, with the smallest plate that holds it, shorter and longer side. */
    public enum Kind {
        /** Wedge and all targets. */
        FULL("full", 'F', 60, 80),
        /** The wedge alone: a lighter calibration, on an offcut if need be. */
        STRIP("strip", 'S', 30, 100),
        /** Strips uncovered for longer and longer: finds the exposure. */
        EXPOSURE("exposure", 'E', 60, 80),
        /** Tones that should print at stated lightnesses: {@link CheckPlate}. */
        CHECK("check", 'C', 60, 80),
        /** Plates of a set's inks, printed over one another: {@link InkChart}. */
        INKS("inks", 'I', 60, 80);

        private final String word;
        private final char letter;
        private final double shorterMillimetres;
        private final double longerMillimetres;

        Kind(String word, char letter, double shorterMillimetres, double longerMillimetres) {
            this.word = word;
            this.letter = letter;
            this.shorterMillimetres = shorterMillimetres;
            this.longerMillimetres = longerMillimetres;
        }

        /** The word on the command line and in files. */
        public String word() {
            return word;
        }

        char letter() {
            return letter;
        }

        /** Finds a kind by its word. */
        public static Kind named(String word) {
            for (Kind kind : values()) {
                if (kind.word.equals(word) && kind != INKS) {
                    return kind;
                }
            }
            throw Refusal.use("test plate \"" + word + "\" is unknown: write full (wedge and targets), strip (wedge"
                    + " alone), exposure (strips of rising exposure) or check (tones of stated lightness)");
        }
    }

    public Recipe {
        double width = widthMicrometres / 1000.0;
        double height = heightMicrometres / 1000.0;
        String remedy = "a " + kind.word + " test plate takes " + Refusal.plain(kind.shorterMillimetres) + "x"
                + Refusal.plain(kind.longerMillimetres) + "mm or more";
        double most = MOST_SIDE_MILLIMETRES;
        Refusal.checkRange(
                "test plate's shorter side", Math.min(width, height), kind.shorterMillimetres, most, "mm", remedy);
        Refusal.checkRange(
                "test plate's longer side", Math.max(width, height), kind.longerMillimetres, most, "mm", remedy);
        Refusal.checkRange("bevel", bevelMicrometres / 1000.0, 0, 6, "mm", "1 to 3 mm is usual");
        Refusal.checkRange("test plate's seed", seed, 0, MOST_SEED, "", "1 is usual");
        Refusal.checkRange(
                "codes' coverage", codePercent, LEAST_CODE, MOST_CODE, "%", "take a tone that holds in the bite");
        Refusal.checkRange(
                "codes' module", codeModuleMicrometres, LEAST_MODULE, MOST_MODULE, "µm", "500 or 600 is usual");
        if (codeModuleMicrometres % MODULE_STEP != 0) {
            throw Refusal.use("codes' module is " + codeModuleMicrometres
                    + " µm; it must be whole hundreds of µm: 500 or 600 is usual");
        }
    }

    /**
     * The recipe of a plate of that size.
     *
     * @param spacingMicrometres of the grain or halftone the codes are drawn in: coarse dots need wide modules
     */
    public static Recipe of(
            Kind kind, Size plate, double bevelMillimetres, int seed, int codePercent, double spacingMicrometres) {
        boolean small = Math.min(plate.widthMillimetres(), plate.heightMillimetres()) < SMALL_SIDE_MILLIMETRES;
        int forGrain = MODULE_STEP * (int) Math.ceil(DOTS_PER_MODULE * spacingMicrometres / MODULE_STEP);
        return new Recipe(
                kind,
                micrometres(plate.widthMillimetres()),
                micrometres(plate.heightMillimetres()),
                micrometres(bevelMillimetres),
                seed,
                codePercent,
                Math.min(MOST_MODULE, Math.max(forGrain, small ? LEAST_MODULE : MODULE)));
    }

    /** The whole plate. */
    public Area plate() {
        return new Area(0, 0, widthMicrometres, heightMicrometres);
    }

    private static int micrometres(double millimetres) {
        return (int) Math.round(millimetres * 1000);
    }
}
