package greyground.app.check;

import greyground.film.job.Job;
import greyground.plan.FilmBlack;
import greyground.plan.TrueSize;
import greyground.plate.inspect.FilmFindings;
import greyground.quantity.FilmPixels;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What is wrong with a film, in a line each. */
final class FilmWarnings {
    /** Places told in words; the rest is counted, and stands in the JSON. */
    private static final int PLACES = 5;

    /** Dots and lands round off by about as much anyhow (assumed). */
    private static final double SHARE_UNSAID = 0.02;

    private FilmWarnings() {}

    static List<String> black(FilmBlack black) {
        return black.missing() == 0
                ? List.of()
                : List.of(String.format(
                        Locale.ROOT,
                        "the film's black is %.2f D over clear, the exposure needs %.2f D: print a denser black, or hold"
                                + " %.1f wedge steps fewer",
                        black.onFilm(),
                        black.needed(),
                        black.missingSteps()));
    }

    /** A film whose plate is not the job's, as after printing to another size; tiles show only parts of the plate. */
    static List<String> size(String film, Job job, FilmPixels pixels, PixelRect plate, boolean tile) {
        double width = pixels.acrossMillimetres(plate.width());
        double height = pixels.downMillimetres(plate.height());
        double across = width / job.plate().widthMillimetres();
        double down = height / job.plate().heightMillimetres();
        // Half a pixel at each edge is rounding.
        boolean same = Math.abs(width - job.plate().widthMillimetres()) <= pixels.acrossMillimetres(1)
                && Math.abs(height - job.plate().heightMillimetres()) <= pixels.downMillimetres(1);
        return tile || same || (TrueSize.isTrue(across) && TrueSize.isTrue(down))
                ? List.of()
                : List.of(String.format(
                        Locale.ROOT,
                        "%sthe plate's outline prints %.1f x %.1f mm large on this film printer, the job says %s: make the"
                                + " film again for it",
                        film,
                        width,
                        height,
                        job.plate()));
    }

    static List<String> findings(String film, FilmFindings found) {
        List<String> warnings = new ArrayList<>();
        for (FilmFindings.OpenBite bite :
                found.openBites().subList(0, Math.min(PLACES, found.openBites().size()))) {
            warnings.add(film + openBite(bite));
        }
        if (found.openBiteCount() > PLACES) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "%sopen bite at %d more places; %.1f mm2 in all",
                    film,
                    found.openBiteCount() - PLACES,
                    found.openBiteSquareMillimetres()));
        }
        if (found.lostLandShare() > SHARE_UNSAID && !found.lostLands().isEmpty()) {
            FilmFindings.LostLand worst = found.lostLands().get(0);
            warnings.add(String.format(
                    Locale.ROOT,
                    "%s%.1f %% of the clear film leaves no land, narrower than %.0f um: most at %s, %.2f mm2",
                    film,
                    100 * found.lostLandShare(),
                    found.limits().leastLandMicrometres(),
                    place(worst),
                    worst.areaSquareMillimetres()));
        }
        if (found.shutShare() > SHARE_UNSAID && !found.shutOpenings().isEmpty()) {
            FilmFindings.ShutOpening worst = found.shutOpenings().get(0);
            warnings.add(String.format(
                    Locale.ROOT,
                    "%s%.1f %% of the black will not wash out, narrower than %.0f um: most at %s, %.2f mm2",
                    film,
                    100 * found.shutShare(),
                    found.limits().leastOpeningMicrometres(),
                    place(worst),
                    worst.areaSquareMillimetres()));
        }
        return warnings;
    }

    static String openBite(FilmFindings.OpenBite bite) {
        return String.format(
                Locale.ROOT,
                "open bite at %s: %.2f mm wide, the pad holds %.2f mm, %.1f mm2",
                place(bite),
                bite.widthMillimetres(),
                bite.criticalWidthMillimetres(),
                bite.areaSquareMillimetres());
    }

    private static String place(FilmFindings.Finding finding) {
        return String.format(Locale.ROOT, "%.1f x %.1f mm", finding.acrossMillimetres(), finding.downMillimetres());
    }
}
