package greyground.chart;

import greyground.quantity.Refusal;
import java.util.List;

/** A drawn thing of known size on a test plate: hard edges, solid black, no grain. All lengths are micrometres. */
public sealed interface Target {
    /** The smallest rectangle that holds it. */
    Area area();

    /**
     * One bar of a gauge: the area is the bar. The widest that still holds ink tells the wiping radius.
     *
     * @param upright whether its width runs across the plate
     */
    record Bar(Area area, boolean upright) implements Target {
        /** The gauge, in micrometres: the critical widths of wiping radii up to some 30 mm lie between. */
        public static final List<Integer> WIDTHS =
                List.of(50, 70, 100, 150, 200, 300, 500, 700, 1000, 1500, 2000, 3000);
    }

    /** Bare copper all over: bitten depth by the step of a gauge, or by the weight lost from a known area. */
    record Bare(Area area) implements Target {}

    /**
     * Black dots on clear film, in rows and columns: the smallest opening that washes out.
     *
     * @param diameter of a dot
     * @param pitch between dots, at least twice the diameter
     */
    record Dots(Area area, int diameter, int pitch) implements Target {
        /** Sizes from 10 to 200 um in steps of the square root of two, rounded. */
        public static final List<Integer> DIAMETERS = List.of(10, 14, 20, 28, 40, 56, 80, 112, 160, 200);

        public Dots {
            checkPitch("dots", diameter, pitch);
        }
    }

    /**
     * Clear holes in a narrow black band, in rows and columns: the smallest land that holds. The band is narrow so that the wiping
     * pad can't reach its floor.
     */
    record Holes(Area area, int diameter, int pitch) implements Target {
        public Holes {
            checkPitch("holes", diameter, pitch);
        }
    }

    /**
     * Line pairs, black and clear equally wide, starting with black.
     *
     * @param period of one pair
     * @param upright whether the lines run down the plate
     */
    record Lines(Area area, int period, boolean upright) implements Target {
        /** Periods from 40 to 400 um. */
        public static final List<Integer> PERIODS = List.of(40, 60, 80, 120, 160, 200, 280, 400);
    }

    /**
     * Black wedges meeting in the middle of a square: their blurred centre shows how far light, resist and bath spread, in every
     * direction.
     */
    record Star(Area area) implements Target {
        /** Black wedges, and as many clear ones. */
        public static final int WEDGES = 18;
    }

    /**
     * A square of dark grain. A large one is dark about its own middle, small ones of the same coverage stand on clear film: what a
     * scanner's stray light adds to the small ones and not to the large one's middle tells how much there is.
     *
     * @param coveragePerMille of the film
     */
    record Dark(Area area, int coveragePerMille) implements Target {
        /** Shorter side from which a dark is its own surroundings. */
        public static final int LARGE = 8_000;

        public Dark {
            Refusal.checkRange("a dark's coverage", coveragePerMille / 10.0, 0, 100, "%", "take the codes' coverage");
        }
    }

    /** Digits made of straight strokes, which bite like the rest. */
    record Numeral(Area area, int number) implements Target {
        /** Width of one digit. */
        public static final int DIGIT_WIDTH = 800;

        /** From one digit to the next. */
        public static final int ADVANCE = 1100;

        /** Height of a digit. */
        public static final int HEIGHT = 1500;

        /** Width of a stroke. */
        public static final int STROKE = 160;

        static Numeral at(int left, int top, int number) {
            int digits = Integer.toString(number).length();
            return new Numeral(new Area(left, top, (digits - 1) * ADVANCE + DIGIT_WIDTH, HEIGHT), number);
        }
    }

    private static void checkPitch(String what, int diameter, int pitch) {
        if (diameter < 1 || pitch < 2 * diameter) {
            throw Refusal.use(what + " of " + diameter + " µm stand " + pitch + " µm apart; they need at least "
                    + 2 * diameter + " µm");
        }
    }
}
