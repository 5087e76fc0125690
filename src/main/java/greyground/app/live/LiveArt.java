package greyground.app.live;

import greyground.app.recipe.ArtSource;
import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.raster.HalvedPlanes;

/** Art as a job turns it, to be looked at before there is any plate. Used by the thread of the {@link LiveBench} it comes from. */
public final class LiveArt {
    private final ArtSource art;
    private final HalvedPlanes planes;
    private final LiveGreys greys;

    LiveArt(ArtSource art, HalvedPlanes planes, LiveGreys greys) {
        this.art = art;
        this.planes = planes;
        this.greys = greys;
    }

    /** Pixels across. */
    public int width() {
        return planes.whole().width();
    }

    /** Pixels down. */
    public int height() {
        return planes.whole().height();
    }

    /** The art by itself; the view counts art pixels. */
    public LivePicture picture(LiveView view) {
        return coloured(view, LiveGreys.ofLuminance());
    }

    /** The same in other colours, one for each grey code. */
    LivePicture coloured(LiveView view, int[] colours) {
        art.own();
        short[] seen = greys.of(new LiveGreys.Window(
                planes, view.left(), view.top(), view.perPixel(), view.perPixel(), view.width(), view.height()));
        return LiveGreys.coloured(
                view,
                (at, across, down) -> across >= 0 && across < width() && down >= 0 && down < height()
                        ? colours[seen[at] & 0xFFFF]
                        : 0);
    }
}
