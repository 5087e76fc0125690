package greyground.tone;

import greyground.quantity.Refusal;

/**
 * The lightest and darkest the print shall reach, absolute CIE L*.
 *
 * @param paperLightness of bare paper, above {@code darkestLightness}, at most 100
 * @param darkestLightness of the fullest tone, 0 or more
 */
public record PrintRange(double paperLightness, double darkestLightness) {
    public PrintRange {
        Refusal.checkRange("paper lightness", paperLightness, 0, 100, "L*", "etching papers are 90 to 97");
        Refusal.checkRange("darkest lightness", darkestLightness, 0, 100, "L*", "intaglio blacks are 11 to 30");
        if (paperLightness - darkestLightness < 1) {
            throw Refusal.use(
                    "paper lightness " + Refusal.plain(paperLightness) + " L* and darkest lightness "
                            + Refusal.plain(darkestLightness)
                            + " L* leave no tone between; paper must be lighter by at least 1: check the workshop's paper and ink");
        }
    }

    /** All that a plate can print, from bare paper to its turning point. */
    public static PrintRange of(PlateResponse response) {
        return new PrintRange(
                response.lightness(0), response.lightness(response.usable().most()));
    }
}
