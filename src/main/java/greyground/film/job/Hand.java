package greyground.film.job;

import greyground.tone.ColourSight;
import greyground.tone.ToneWish;

/**
 * What the printmaker's hand does to the art before the plate's curve. It is done in the order of the components, whatever the order in which
 * it was told.
 *
 * @param sight how colours become greys
 * @param wish where tones go
 */
public record Hand(ColourSight sight, ToneWish wish) {
    /** Nothing is touched. */
    public static final Hand AT_REST = new Hand(ColourSight.EYE, ToneWish.AS_THEY_ARE);
}
