package greyground.app.recipe;

import greyground.art.burnish.LocalTones;
import greyground.art.burnish.LocalTouch;
import greyground.film.job.Job;
import greyground.finding.Findings;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is said of places burnished and deepened. */
final class TouchedPlaces {
    /** L* to the millimetre above which an edge is seen on even paper (assumed). */
    private static final double STEEPEST = 3;

    /** L* by which tones may change places across an edge unseen (assumed). */
    private static final double MOST_REVERSAL = 2;

    /** Places looked at along an edge, and edges looked at. */
    private static final int PLACES = 32;

    private static final int EDGES = 500;

    private TouchedPlaces() {}

    /** Says how many there are and how much of the plate they change; nothing where there are none. */
    static void say(Findings findings, Job job) {
        List<LocalTouch> touches = job.art().hand().retouching().touches();
        if (touches.isEmpty()) {
            return;
        }
        LocalTones.Extent extent = LocalTones.extent(
                touches, job.plate().widthMillimetres(), job.plate().heightMillimetres());
        findings.say(
                "touches",
                (touches.size() == 1 ? "1 place" : touches.size() + " places")
                        + changed(extent.lighter(), "lighter", extent.mostLighter())
                        + changed(extent.darker(), "darker", extent.mostDarker()),
                new Findings()
                        .put("count", (double) touches.size())
                        .put("lighterShare", extent.lighter())
                        .put("mostLighter", extent.mostLighter())
                        .put("darkerShare", extent.darker())
                        .put("mostDarker", extent.mostDarker()));
    }

    private static String changed(double share, String how, double most) {
        return share == 0
                ? ""
                : String.format(Locale.ROOT, "; %.1f %% of the plate %s by up to L* %.1f", 100 * share, how, most);
    }

    /** Says that an edge will be seen, and which feather would hide it; empty where none will. */
    static Optional<String> steep(Job job, GreyPlane turned, LocalTones.Lie lie, ArtRange range) {
        List<LocalTouch> seen = job.art().hand().retouching().touches().stream()
                .filter(touch -> 1.5 * Math.abs(touch.lightness()) > STEEPEST * touch.featherMillimetres())
                .limit(EDGES)
                .filter(touch -> LocalTouch.reversal(
                                touch.lightness(), touch.featherMillimetres(), slope(touch, turned, lie, range))
                        > MOST_REVERSAL)
                .toList();
        return seen.stream()
                .max((one, other) -> Double.compare(steepness(one), steepness(other)))
                .map(touch -> String.format(
                        Locale.ROOT,
                        "%s: %s L* over %s mm is the hardest; a feather of %.0f mm or more would hide it",
                        seen.size() == 1
                                ? "one touch has an edge that will be seen"
                                : seen.size() + " touches have edges that will be seen",
                        Refusal.plain(Math.abs(touch.lightness())),
                        Refusal.plain(touch.featherMillimetres()),
                        Math.ceil(1.5 * Math.abs(touch.lightness()) / STEEPEST)));
    }

    private static double steepness(LocalTouch touch) {
        return Math.abs(touch.lightness()) / touch.featherMillimetres();
    }

    /** How fast the art itself changes along the edge, in L* to the millimetre: what nine places in ten do not pass. */
    private static double slope(LocalTouch touch, GreyPlane turned, LocalTones.Lie lie, ArtRange range) {
        int across = Math.max(1, (int) Math.rint(touch.featherMillimetres() / 4 / lie.across()));
        int down = Math.max(1, (int) Math.rint(touch.featherMillimetres() / 4 / lie.down()));
        double[] slopes = touch.edge(PLACES).stream()
                .mapToDouble(place -> {
                    double x = (place.acrossMillimetres() - lie.left()) / lie.across();
                    double y = (place.downMillimetres() - lie.top()) / lie.down();
                    double right = lightness(turned, x + across, y, range) - lightness(turned, x - across, y, range);
                    double below = lightness(turned, x, y + down, range) - lightness(turned, x, y - down, range);
                    double dx = right / (2 * across * lie.across());
                    double dy = below / (2 * down * lie.down());
                    return Math.sqrt(dx * dx + dy * dy);
                })
                .sorted()
                .toArray();
        return Arrays.stream(slopes).skip(slopes.length * 9L / 10).findFirst().orElse(0);
    }

    private static double lightness(GreyPlane plane, double x, double y, ArtRange range) {
        short[] one = new short[1];
        int column = (int) Math.max(0, Math.min(plane.width() - 1, Math.floor(x)));
        int row = (int) Math.max(0, Math.min(plane.height() - 1, Math.floor(y)));
        plane.readRun(column, row, 1, one, 0);
        return Lightness.ofLuminance((one[0] & 0xFFFF) / range.white() / GreyPlane.WHITE);
    }
}
