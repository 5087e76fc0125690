package greyground.film.job;

import greyground.art.burnish.LocalTouch;
import java.util.List;

/**
 * What the hand does to single places of the art.
 *
 * @param touches places burnished and deepened; their order is no matter
 * @param spots dust, hairs and scratches that are healed, before all else
 */
public record Retouching(List<LocalTouch> touches, SpotWish spots) {
    public static final Retouching NONE = new Retouching(List.of(), SpotWish.NONE);

    public Retouching {
        touches = List.copyOf(touches);
    }
}
