package greyground.ink;

import greyground.colour.Lab;
import greyground.quantity.Refusal;
import greyground.workshop.KeptResponse;
import java.util.List;

/**
 * Tones of one ink's test plate as they were read.
 *
 * @param response how light they print in the light that the ink takes most of, by coverage, and how the plate was made
 * @param colours of the same levels on the set's paper, one for each
 */
public record InkTones(KeptResponse response, List<Lab> colours) {
    public InkTones {
        colours = List.copyOf(colours);
        if (colours.size() != response.levels().size()) {
            throw Refusal.use("an ink's test plate has " + response.levels().size() + " levels and " + colours.size()
                    + " colours; each level must have one: read the test plates again");
        }
    }
}
