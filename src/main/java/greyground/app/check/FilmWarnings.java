package greyground.app.check;

import greyground.film.job.Job;
import greyground.plan.FilmBlack;
import greyground.plan.TrueSize;
import greyground.plate.inspect.FilmFindings;
import greyground.quantity.FilmPixels;
import greyground.quantity.Offset;
import greyground.raster.PixelRect;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What is wrong with a film, in a line each. */
final class FilmWarnings {
    /** Where the film's black is kept. */
    private static final String BLACK = "filmPrinter.blackUvDensity";

    /** Dots and lands round off by about as much anyhow (assumed). */
    private static final double SHARE_UNSAID = 0.02;

    private FilmWarnings() {}

    static List<PlateWarning> black(FilmBlack black) {
        return black.missing() == 0
                ? List.of()
                : List.of(PlateWarning.of(
                        "thin-black",
                        String.format(
                                Locale.ROOT,
                                "the film's black is %.2f D over clear, the exposure needs %.2f D: print a denser black, or"
                                        + " hold %.1f wedge steps fewer",
                                black.onFilm(),
                                black.needed(),
                                black.missingSteps()),
                        BLACK));
    }

    /** A film whose plate is not the job's, as after printing to another size; tiles show only parts of the plate. */
    static List<PlateWarning> size(String film, Job job, FilmPixels pixels, PixelRect plate, boolean tile) {
        double width = pixels.acrossMillimetres(plate.width());
        double height = pixels.downMillimetres(plate.height());
        double across = width / job.plate().widthMillimetres();
        double down = height / job.plate().heightMillimetres();
        // Half a pixel at each edge is rounding.
        boolean same = Math.abs(width - job.plate().widthMillimetres()) <= pixels.acrossMillimetres(1)
                && Math.abs(height - job.plate().heightMillimetres()) <= pixels.downMillimetres(1);
        return tile || same || (TrueSize.isTrue(across) && TrueSize.isTrue(down))
                ? List.of()
                : List.of(PlateWarning.of(
                        "film",
                        String.format(
                                Locale.ROOT,
                                "%sthe plate's outline prints %.1f x %.1f mm large on this film printer, the job says %s:"
                                        + " make the film again for it",
                                film,
                                width,
                                height,
                                job.plate()),
                        ""));
    }

    /**
     * What the plate will not keep, worst first.
     *
     * @param mirroredIn the plate's width in mm on a film that is the mirror of the print; 0 on one that reads like it
     */
    static List<PlateWarning> findings(String film, FilmFindings found, double mirroredIn) {
        List<PlateWarning> warnings = new ArrayList<>();
        for (FilmFindings.OpenBite bite : found.openBites()) {
            String words = String.format(
                    Locale.ROOT,
                    "%sopen bite %.2f mm wide, where the pad holds %.2f mm",
                    film,
                    bite.widthMillimetres(),
                    bite.criticalWidthMillimetres());
            warnings.add(placed("open-bite", words, bite, bite.widthMillimetres(), mirroredIn));
        }
        if (found.lostLandShare() > SHARE_UNSAID && !found.lostLands().isEmpty()) {
            String words = String.format(
                    Locale.ROOT,
                    "%s%.1f %% of the clear film leaves no land, narrower than %.0f \u00b5m; most",
                    film,
                    100 * found.lostLandShare(),
                    found.limits().leastLandMicrometres());
            warnings.add(placed("lost-land", words, found.lostLands().get(0), 0, mirroredIn));
        }
        if (found.shutShare() > SHARE_UNSAID && !found.shutOpenings().isEmpty()) {
            String words = String.format(
                    Locale.ROOT,
                    "%s%.1f %% of the black will not wash out, narrower than %.0f \u00b5m; most",
                    film,
                    100 * found.shutShare(),
                    found.limits().leastOpeningMicrometres());
            warnings.add(placed("shut-opening", words, found.shutOpenings().get(0), 0, mirroredIn));
        }
        return warnings;
    }

    private static PlateWarning placed(
            String kind, String words, FilmFindings.Finding finding, double size, double mirroredIn) {
        double across = finding.acrossMillimetres();
        return new PlateWarning(
                kind,
                words,
                Optional.of(new Offset(mirroredIn > 0 ? mirroredIn - across : across, finding.downMillimetres())),
                size,
                finding.areaSquareMillimetres(),
                "");
    }
}
