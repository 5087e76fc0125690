package greyground.grain;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Ruling;
import greyground.quantity.Unit;

/** How the film carries tone: the alternatives, each with only its own settings. */
public sealed interface Grain {
    /** A short name for legends, such as "grain 180 µm". */
    String name();

    /**
     * Clustered random dots and lands (green noise).
     *
     * @param spacingMicrometres mean spacing of dots, the root of the area per dot, 20 to 2000
     * @param seed chooses one of many equivalent grains
     */
    record Stochastic(double spacingMicrometres, long seed) implements Grain {
        /** Spacings that a film carries. */
        public static final Range SPACING = new Range(20, 2000, Unit.MICROMETRES, "120 to 260 µm suits most plates");

        /** Safe in most resists (assumed). */
        public static final Stochastic USUAL = new Stochastic(180, 1);

        public Stochastic {
            SPACING.check("grain", spacingMicrometres);
        }

        @Override
        public String name() {
            return "grain " + Refusal.plain(spacingMicrometres) + " µm";
        }
    }

    /**
     * Regular dots that grow.
     *
     * @param ruling lines per centimetre
     * @param angleDegrees of the rows against the film's width, 0 to 90 exclusive of 90 for round dots, -90 to 180 accepted
     * @param shape of the dot
     */
    record Halftone(Ruling ruling, double angleDegrees, DotShape shape) implements Grain {
        /** Angles of the rows. */
        public static final Range ANGLE = new Range(-180, 180, Unit.DEGREES, "45 is least visible");

        /** Between the 20 and 110 lines that copper carries, on the safe side (assumed); 45 degrees are least seen. */
        public static final Halftone USUAL = new Halftone(new Ruling(40), 45, DotShape.ROUND);

        public Halftone {
            ANGLE.check("halftone angle", angleDegrees);
        }

        @Override
        public String name() {
            return shape.words() + " " + Refusal.plain(ruling.linesPerCentimetre()) + " lines/cm at "
                    + Refusal.plain(angleDegrees) + " degrees";
        }
    }

    /**
     * No dots: the film carries density itself.
     *
     * @param bits grey depth of the film, 8 or 16
     */
    record Continuous(int bits) implements Grain {
        /** All the grey that a film printer takes. */
        public static final Continuous USUAL = new Continuous(16);

        public Continuous {
            if (bits != 8 && bits != 16) {
                throw Refusal.use("continuous-tone film has " + bits + " bits; it must have 8 or 16");
            }
        }

        @Override
        public String name() {
            return "continuous tone, " + bits + " bit";
        }
    }

    /** The shape of a halftone dot. */
    enum DotShape {
        /** Round dots that join at mid-tone into round holes. */
        ROUND("round", "round dots"),
        /** Parallel lines that widen. */
        LINE("line", "lines");

        private final String word;
        private final String words;

        DotShape(String word, String words) {
            this.word = word;
            this.words = words;
        }

        /** The word on the command line and in files. */
        public String word() {
            return word;
        }

        /** The trade's words. */
        public String words() {
            return words;
        }
    }
}
