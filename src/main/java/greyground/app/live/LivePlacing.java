package greyground.app.live;

import greyground.app.sight.LiveView;
import greyground.film.job.ArtScale;
import greyground.film.job.Job;
import greyground.film.job.Placing;
import greyground.raster.HalvedPlanes;

/** Where the art lies on a job's plate, and its greys there. Plate places count in millimetres from its top left, as the print reads. */
final class LivePlacing {
    /** Sides that meet but for rounding are as long as each other (assumed). */
    private static final double ROUNDING_MILLIMETRES = 1e-6;

    private final Job job;
    private final HalvedPlanes planes;
    private final LiveGreys greys;
    private final ArtScale scale;
    private final double width;
    private final double height;

    LivePlacing(Job job, HalvedPlanes planes, LiveGreys greys) {
        this.job = job;
        this.planes = planes;
        this.greys = greys;
        this.width = job.plate().widthMillimetres();
        this.height = job.plate().heightMillimetres();
        this.scale = ArtScale.of(
                planes.whole().width(),
                planes.whole().height(),
                job.art().crop(),
                job.placing().fit(),
                job.placing().shrink(),
                new ArtScale.Plate(width, height, 1, 1));
    }

    /** A part of the plate, in millimetres of it. */
    record Cover(double left, double right, double top, double bottom) {
        boolean has(double across, double down) {
            return across >= left && across < right && down >= top && down < bottom;
        }
    }

    /** The plate and so much round it. */
    Cover plate(double margin) {
        return new Cover(-margin, width + margin, -margin, height + margin);
    }

    /** What the art covers where it may run past the platemark by so much. */
    Cover cover(double bleed) {
        if (job.placing().fit() == Placing.Fit.FILL) {
            return plate(bleed);
        }
        double halfAcross = job.art().crop().width() * planes.whole().width() * scale.across() / 2;
        double halfDown = job.art().crop().height() * planes.whole().height() * scale.down() / 2;
        boolean full = halfAcross >= width / 2 - ROUNDING_MILLIMETRES;
        boolean tall = halfDown >= height / 2 - ROUNDING_MILLIMETRES;
        return new Cover(
                full ? -bleed : width / 2 - halfAcross,
                full ? width + bleed : width / 2 + halfAcross,
                tall ? -bleed : height / 2 - halfDown,
                tall ? height + bleed : height / 2 + halfDown);
    }

    /** The greys under a window of the plate, row by row; nobody may change them. */
    short[] greys(LiveView view) {
        return greys.of(new LiveGreys.Window(
                planes,
                artX(view.left()),
                artY(view.top()),
                view.perPixel() / scale.across(),
                view.perPixel() / scale.down(),
                view.width(),
                view.height()));
    }

    /** Art column under a place of the plate, in art pixels. */
    double artX(double across) {
        return scale.artX(across - width / 2);
    }

    /** Art row under a place of the plate, in art pixels. */
    double artY(double down) {
        return scale.artY(down - height / 2);
    }
}
