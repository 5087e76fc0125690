package greyground.film.job;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * Whether the film must be mirrored, by parity.
 *
 * <p>With rho = +1 when the film reads right as you look at its ink, s = -1 when the ink lies on the plate and +1 when it
 * faces away, and n contact transfers from plate to the last sheet, the print reads right when rho * s * (-1)^n = +1: seen
 * through the plate's face the ink is read from behind when it lies down, and each transfer flips once more (geometry).
 *
 * @param inkSide which way the printed side of the film lies on the plate
 * @param transfers contacts from the plate (or its carrier) to the final sheet, 1 to 9; 1 is direct printing
 */
public record ReadingSide(InkSide inkSide, int transfers) {
    /** Contacts from the plate to the final sheet. */
    public static final Range TRANSFERS =
            new Range(1, 9, Unit.COUNT, "1 is direct printing, 2 is offset or a counterproof");

    /** Direct intaglio with the ink on the resist: the usual way, and the sharpest. */
    public static final ReadingSide USUAL = new ReadingSide(InkSide.DOWN, 1);

    /** Which way the printed side of the film lies. */
    public enum InkSide {
        /** The ink touches the resist. */
        DOWN,
        /** The ink faces the lamp; the film's base lies between. */
        UP
    }

    public ReadingSide {
        TRANSFERS.check("contact transfers", transfers);
    }

    /** Whether the film must read wrong as you look at its ink. */
    public boolean mirrored() {
        int side = inkSide == InkSide.DOWN ? -1 : 1;
        int flips = transfers % 2 == 0 ? 1 : -1;
        return side * flips < 0;
    }

    /** The wording printed on the film itself. Legends are never mirrored, so the words read right on the ink side of any film. */
    public String legend() {
        return mirrored()
                ? "INK SIDE - these words read right when the ink faces you; picture and F are mirrored here"
                : "INK SIDE - these words read right when the ink faces you; so do picture and F";
    }

    /** The reason in one sentence, for people. */
    public String words() {
        String lies = inkSide == InkSide.DOWN ? "ink side down on the plate" : "ink side up, away from the plate";
        String goes = transfers == 1 ? "printed directly" : transfers + " contact transfers to the final sheet";
        return (mirrored() ? "mirrored" : "not mirrored") + ": " + lies + ", " + goes;
    }
}
