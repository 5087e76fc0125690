package greyground.tone;

import greyground.quantity.Refusal;

/**
 * The art's own paper white and ink black; lighter and darker greys are clipped to them.
 *
 * @param white linear luminance of the paper, above {@code black}, at most 1
 * @param black linear luminance of the darkest ink, 0 or more
 */
public record ArtRange(double white, double black) {
    /** Everything between no light and full white. */
    public static final ArtRange WHOLE = new ArtRange(1, 0);

    public ArtRange {
        Refusal.checkRange("art white", white, 0, 1, "", "give a linear luminance; 1 takes the art's own white");
        Refusal.checkRange("art black", black, 0, 1, "", "give a linear luminance; 0 takes the art's own black");
        if (white - black < 1e-3) {
            throw Refusal.use(
                    "art white " + Refusal.plain(white) + " and art black " + Refusal.plain(black)
                            + " leave no tone between; white must be lighter by at least 0.001: choose two places farther apart");
        }
    }

    /** A luminance relative to the art's white, clipped to black..1. */
    public double relative(double luminance) {
        return Math.max(black, Math.min(white, luminance)) / white;
    }

    /** The art's black relative to its white, 0 to below 1. */
    public double relativeBlack() {
        return black / white;
    }
}
