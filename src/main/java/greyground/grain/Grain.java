package greyground.grain;

import greyground.quantity.Refusal;
import greyground.quantity.Ruling;

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
        public Stochastic {
            Refusal.checkRange("grain", spacingMicrometres, 20, 2000, "µm", "120 to 260 µm suits most plates");
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
        public Halftone {
            Refusal.checkRange("halftone angle", angleDegrees, -180, 180, "degrees", "45 is least visible");
        }

        @Override
        public String name() {
            return shape.word() + " " + Refusal.plain(ruling.linesPerCentimetre()) + " lines/cm at "
                    + Refusal.plain(angleDegrees) + " degrees";
        }
    }

    /**
     * No dots: the film carries density itself.
     *
     * @param bits grey depth of the film, 8 or 16
     */
    record Continuous(int bits) implements Grain {
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
        ROUND("round dots"),
        /** Parallel lines that widen. */
        LINE("lines");

        private final String word;

        DotShape(String word) {
            this.word = word;
        }

        /** The trade word. */
        public String word() {
            return word;
        }
    }
}
