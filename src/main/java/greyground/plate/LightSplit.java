package greyground.plate;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * How photogravure's light is shared between its screen and its image. Doses are behind no film, in units of the dose that just hardens the
 * resist through.
 *
 * @param screenDose through the screen film, 0.01 to 20
 * @param imageDose through the positive, 0.01 to 20
 * @param edgeBlurMicrometres softness of the screen's edges as they reach the resist, a standard deviation, 0 to 200
 */
public record LightSplit(double screenDose, double imageDose, double edgeBlurMicrometres) {
    public static final Range DOSE = new Range(0.01, 20, Unit.RATIO, "0.3 to 3 hardening doses are usual");
    public static final Range EDGE_BLUR =
            new Range(0, 200, Unit.MICROMETRES, "a fifth of the dots' spacing closes the gap");

    public LightSplit {
        DOSE.check("screen dose", screenDose);
        DOSE.check("image dose", imageDose);
        EDGE_BLUR.check("edge blur of the screen", edgeBlurMicrometres);
    }

    /** Both doses together. */
    public double together() {
        return screenDose + imageDose;
    }
}
