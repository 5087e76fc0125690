package greyground.desk.model;

import greyground.app.recipe.JobWords;
import greyground.film.job.ArtChoice;
import greyground.film.job.Job;
import greyground.film.job.LevelledArt;
import greyground.quantity.Refusal;
import java.util.Map;

/** What picture and fragment become when they are turned or cut by hand, in the words of {@link JobWords}. */
public final class Turning {
    private static final double LEAST_SHARE = 0.01;

    private Turning() {}

    /** A quarter turn; the fragment turns along. */
    public static Map<String, String> quarter(ArtChoice art, boolean clockwise) {
        double degrees = 90 * art.quarterTurns() + art.straightenDegrees() + (clockwise ? 90 : -90);
        // A word of -45 to 315 says every turn once.
        double turned = degrees > 315 ? degrees - 360 : degrees < -45 ? degrees + 360 : degrees;
        ArtChoice.Crop crop = art.crop();
        double left = clockwise ? 1 - crop.top() - crop.height() : crop.top();
        double top = clockwise ? crop.left() : 1 - crop.left() - crop.width();
        return Map.of(
                "rotate",
                Refusal.plain(turned),
                "crop",
                words(left, top, /* width= */ crop.height(), /* height= */ crop.width()));
    }

    /**
     * Straightened by a line drawn along what should be level, or upright if that is nearer.
     *
     * @param across length of the line across, on the art as it lies now
     * @param down the same, down
     */
    public static Map<String, String> levelled(ArtChoice art, double across, double down) {
        double degrees = Math.toDegrees(Math.atan2(down, across));
        double off = degrees - 90 * Math.rint(degrees / 90);
        double present = 90 * art.quarterTurns() + art.straightenDegrees();
        double turned = Math.rint((present - off) * 100) / 100;
        double once = turned > 315 ? turned - 360 : turned < -45 ? turned + 360 : turned;
        return Map.of("rotate", Refusal.plain(once));
    }

    /** A fragment drawn on art of a size; held within it. */
    public static Map<String, String> cropped(Viewport.Area area, double artWidth, double artHeight) {
        double left = held(area.left() / artWidth, 0, 1 - LEAST_SHARE);
        double top = held(area.top() / artHeight, 0, 1 - LEAST_SHARE);
        double right = held((area.left() + area.width()) / artWidth, left + LEAST_SHARE, 1);
        double bottom = held((area.top() + area.height()) / artHeight, top + LEAST_SHARE, 1);
        return Map.of("crop", words(left, top, right - left, bottom - top));
    }

    /**
     * A fragment that stays on the picture: what was set stays, and what it leaves no room for gives way.
     *
     * @param words "left%,top%,width%,height%"
     * @param set which of the four was set
     */
    public static String held(String words, int set) {
        String[] parts = words.replace("%", "").split(",", 4);
        double[] shares = new double[4];
        for (int i = 0; i < 4; i++) {
            shares[i] = Double.parseDouble(parts[i]) / 100;
        }
        for (int start = 0; start < 2; start++) {
            int size = start + 2;
            if (shares[start] + shares[size] > 1) {
                int gives = set == size ? start : size;
                shares[gives] = 1 - shares[set == size ? size : start];
            }
        }
        return words(shares[0], shares[1], shares[2], shares[3]);
    }

    /** The largest fragment of the plate's shape that straightened art fills. */
    public static Map<String, String> covered(Job job, double artWidth, double artHeight) {
        ArtChoice.Crop crop = LevelledArt.of(artWidth, artHeight, job.art()).covered(job.plate(), job.placing());
        return Map.of("crop", words(crop.left(), crop.top(), crop.width(), crop.height()));
    }

    /** Where a fragment lies on art of a size. */
    public static Viewport.Area area(ArtChoice.Crop crop, double artWidth, double artHeight) {
        return new Viewport.Area(
                crop.left() * artWidth, crop.top() * artHeight, crop.width() * artWidth, crop.height() * artHeight);
    }

    private static String words(double left, double top, double width, double height) {
        return percent(Math.max(0, left)) + "," + percent(Math.max(0, top)) + "," + percent(width) + ","
                + percent(height);
    }

    /** Rounded down to a ten-thousandth of a percent, so that parts never add up to more than all. */
    private static String percent(double share) {
        return Refusal.plain(Math.floor(share * 1e6 + 1e-6) / 1e4) + "%";
    }

    private static double held(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }
}
