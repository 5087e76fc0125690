package greyground.app.live;

import greyground.app.recipe.FilmRecipe;
import greyground.app.sight.LiveView;
import greyground.film.compose.Outlined;
import java.util.Optional;

/**
 * How much of the picture its outline leaves at each place of a window.
 *
 * @param outlined none where all of it is left
 * @param shares row by row
 */
@SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
record Shares(Optional<Outlined> outlined, int[] shares) {
    static Shares of(FilmRecipe recipe, LiveView view) {
        double pixel = view.perPixel();
        Optional<Outlined> outlined = recipe.outlined(
                new Outlined.Lie(view.left() + pixel / 2, view.top() + pixel / 2, pixel, pixel, view.width(), false));
        int[] shares = new int[outlined.isEmpty() ? 0 : view.width() * view.height()];
        outlined.map(Outlined::rows).ifPresent(rows -> {
            for (int y = 0; y < view.height(); y++) {
                System.arraycopy(rows.row(y), 0, shares, y * view.width(), view.width());
            }
        });
        return new Shares(outlined, shares);
    }

    boolean whole(int at) {
        return outlined.isEmpty() || shares[at] == Outlined.WHOLE;
    }

    int coverage(int of, int at) {
        return whole(at) ? of : outlined.orElseThrow().coverage(of, shares[at]);
    }
}
