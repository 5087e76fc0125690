package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * The lamp over the exposure frame, now and when the exposure times were found.
 *
 * @param kind a small lamp, or a bank of tubes
 * @param distanceMillimetres lamp to plate now, 20 to 5000
 * @param distanceAtTestMillimetres lamp to plate when the exposures were found, 20 to 5000
 * @param hours the lamp has burnt, 0 to 100 000
 * @param hoursAtTest burnt when the exposures were found, 0 to 100 000
 * @param hoursToFourFifths hours after which 80 % of the light is left, 1 to 1 000 000
 * @param halfAngleDegrees half the angle that the source fills, seen from the plate, 0 to 80
 */
public record LampFigures(
        Kind kind,
        Figure distanceMillimetres,
        Figure distanceAtTestMillimetres,
        Figure hours,
        Figure hoursAtTest,
        Figure hoursToFourFifths,
        Figure halfAngleDegrees) {
    public static final Range DISTANCE = new Range(20, 5000, Unit.MILLIMETRES, "measure from lamp to plate");

    /** The shape of the source, which decides whether distance can be reckoned. */
    public enum Kind {
        /** Small against its distance: light falls with the square of the distance. */
        POINT,
        /** A bank of tubes: no simple law closer than about the tubes' own length. */
        TUBES
    }

    public LampFigures {
        String distance = "measure from lamp to plate";
        distanceMillimetres.within("light.distanceMillimetres", DISTANCE);
        distanceAtTestMillimetres.within("light.distanceAtTestMillimetres", 20, 5000, "mm", distance);
        hours.within("light.hours", 0, 100_000, "h", "read the lamp's hour counter or log");
        hoursAtTest.within("light.hoursAtTest", 0, 100_000, "h", "read the lamp's hour counter or log");
        hoursToFourFifths.within("light.hoursToFourFifths", 1, 1_000_000, "h", "ask the lamp's data sheet");
        halfAngleDegrees.within("light.halfAngleDegrees", 0, 80, "degrees", "use the lamp's half width and distance");
    }

    /** A new small lamp at 60 cm, where the exposures were found. */
    public static LampFigures assumed() {
        return new LampFigures(
                Kind.POINT,
                Figure.assumed(600, "common practice: about the diagonal of the largest plate"),
                Figure.assumed(600, "common practice: the exposures hold for today's distance until another is stated"),
                Figure.assumed(0, "common practice: lamp as it was when the exposures were found"),
                Figure.assumed(0, "common practice: lamp as it was when the exposures were found"),
                Figure.assumed(
                        1000, "J. Illum. Engng Inst. Japan 46(12): copying tubes keep about 80 % at 1000 h or more"),
                Figure.assumed(10, "from memory: a small lamp with reflector at 60 cm, unverified"));
    }
}
