package greyground.desk.model;

import greyground.film.job.ArtChoice;
import greyground.film.job.ArtFields;
import greyground.film.job.Job;
import greyground.film.job.LevelledArt;

/** What picture and fragment become when they are turned or cut by hand. */
public final class Turning {
    private static final double LEAST_SHARE = 0.01;

    private Turning() {}

    /** A quarter turn; the fragment turns along. */
    public static Job quarter(Job job, boolean clockwise) {
        ArtChoice.Crop crop = job.art().crop();
        double left = clockwise ? 1 - crop.top() - crop.height() : crop.top();
        double top = clockwise ? crop.left() : 1 - crop.left() - crop.width();
        Job turned = ArtFields.ROTATE.with(job, ArtFields.ROTATE.of(job) + (clockwise ? 90 : -90));
        return ArtFields.CROP.with(turned, crop(left, top, /* width= */ crop.height(), /* height= */ crop.width()));
    }

    /**
     * Straightened by a line drawn along what should be level, or upright if that is nearer.
     *
     * @param across length of the line across, on the art as it lies now
     * @param down the same, down
     */
    public static Job levelled(Job job, double across, double down) {
        double degrees = Math.toDegrees(Math.atan2(down, across));
        double off = degrees - 90 * Math.rint(degrees / 90);
        return ArtFields.ROTATE.with(job, Math.rint((ArtFields.ROTATE.of(job) - off) * 100) / 100);
    }

    /** A fragment drawn on art of a size; held within it. */
    public static Job cropped(Job job, Viewport.Area area, double artWidth, double artHeight) {
        double left = Viewport.held(area.left() / artWidth, 0, 1 - LEAST_SHARE);
        double top = Viewport.held(area.top() / artHeight, 0, 1 - LEAST_SHARE);
        double right = Viewport.held((area.left() + area.width()) / artWidth, left + LEAST_SHARE, 1);
        double bottom = Viewport.held((area.top() + area.height()) / artHeight, top + LEAST_SHARE, 1);
        return ArtFields.CROP.with(job, crop(left, top, right - left, bottom - top));
    }

    /** The largest fragment of the plate's shape that straightened art fills. */
    public static Job covered(Job job, double artWidth, double artHeight) {
        ArtChoice.Crop most = LevelledArt.of(artWidth, artHeight, job.art()).covered(job.plate(), job.placing());
        return ArtFields.CROP.with(job, crop(most.left(), most.top(), most.width(), most.height()));
    }

    /** Where a fragment lies on art of a size. */
    public static Viewport.Area area(ArtChoice.Crop crop, double artWidth, double artHeight) {
        return new Viewport.Area(
                crop.left() * artWidth, crop.top() * artHeight, crop.width() * artWidth, crop.height() * artHeight);
    }

    private static ArtChoice.Crop crop(double left, double top, double width, double height) {
        return new ArtChoice.Crop(share(left), share(top), share(width), share(height));
    }

    /** Rounded down to a ten-thousandth of a percent, so that parts never add up to more than all. */
    private static double share(double exact) {
        return Math.max(0, Math.floor(exact * 1e6 + 1e-6) / 1e6);
    }
}
