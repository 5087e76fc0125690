package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * How the plate is wiped.
 *
 * @param padRadiusMillimetres effective radius of the wiping pad, 0.01 to 100
 * @param plateToneMicrometres ink film that wiping leaves everywhere, 0 to 5
 */
public record WipeFigures(Figure padRadiusMillimetres, Figure plateToneMicrometres) {
    public static final Range PAD =
            new Range(0.01, 100, Unit.MILLIMETRES, "widest bar still solid, squared, over 8 x depth");
    public static final Range PLATE_TONE = new Range(0, 5, Unit.MICROMETRES, "0 to 0.3 µm is a clean wipe");

    public WipeFigures {
        padRadiusMillimetres.within("wipe.padRadiusMillimetres", PAD);
        plateToneMicrometres.within("wipe.plateToneMicrometres", PLATE_TONE);
    }

    /** A firm canvas pad. */
    public static WipeFigures assumed() {
        return new WipeFigures(
                Figure.assumed(1.5, "from memory, unverified: a 0.5 mm bar just holds at 20 µm depth"),
                Figure.assumed(0, "assumed: a plate wiped clean, until a bare edge is measured"));
    }
}
