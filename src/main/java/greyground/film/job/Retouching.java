package greyground.film.job;

import greyground.art.burnish.LocalTouch;
import java.util.List;

/**
 * What the hand does to single places of the art.
 *
 * @param touches places burnished and deepened; their order is no matter
 */
public record Retouching(List<LocalTouch> touches) {
    public static final Retouching NONE = new Retouching(List.of());

    public Retouching {
        touches = List.copyOf(touches);
    }
}
