package greyground.app;

import greyground.film.Job;
import greyground.plan.FilmBlack;
import greyground.plan.TrueSize;
import greyground.plate.FilmFindings;
import greyground.quantity.Resolution;
import greyground.raster.PixelRect;
import greyground.workshop.Figure;
import greyground.workshop.FilmPrinter;
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

    static List<String> scale(FilmPrinter printer) {
        List<String> warnings = new ArrayList<>();
        scale("across the film", printer.scaleX(), warnings);
        scale("along the film", printer.scaleY(), warnings);
        return warnings;
    }

    private static void scale(String where, Figure scale, List<String> warnings) {
        if (!TrueSize.isTrue(scale.value())) {
            warnings.add(String.format(
                    Locale.ROOT,
                    "the film printer's 100 mm measure %.2f mm %s, out by more than 0.2 %%: print at 100 %%, with no"
                            + " fitting to the page, and measure again",
                    scale.value() * 100,
                    where));
        }
    }

    /** A film whose plate is not the job's, as after printing to another size; tiles show only parts of the plate. */
    static List<String> size(String film, Job job, Resolution resolution, PixelRect plate, boolean tile) {
        double width = resolution.millimetres(plate.width());
        double height = resolution.millimetres(plate.height());
        double across = width / job.plate().widthMillimetres();
        double down = height / job.plate().heightMillimetres();
        // Half a pixel at each edge is rounding.
        double pixel = resolution.millimetres(1);
        boolean same = Math.abs(width - job.plate().widthMillimetres()) <= pixel
                && Math.abs(height - job.plate().heightMillimetres()) <= pixel;
        return tile || same || (TrueSize.isTrue(across) && TrueSize.isTrue(down))
                ? List.of()
                : List.of(String.format(
                        Locale.ROOT,
                        "%sthe plate's outline measures %.1f x %.1f mm on the film, the job says %s: make the film again"
                                + " at its own size",
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
