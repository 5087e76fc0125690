package greyground.app.recipe;

import greyground.art.printed.CellMeans;
import greyground.art.printed.PrintedScreen;
import greyground.art.printed.ScreenBeat;
import greyground.art.printed.ScreenSearch;
import greyground.film.job.Origin;
import greyground.grain.HalftoneGeometry;
import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What is known of art that may be a print.
 *
 * @param origin what the job says it is
 * @param screens that were found, strongest first; none where none were looked for
 * @param pixelsPerInch of the scan; 0 where the file doesn't say
 */
record PrintedArt(Origin origin, List<PrintedScreen> screens, double pixelsPerInch) {
    /** A page that drifts more leaves dots where it does (assumed). */
    private static final double MOST_DRIFT = 0.01;

    /** Where fewer of the places looked at show dots, the art holds more than a print (assumed). */
    private static final double ALL_OVER = 0.6;

    /** Bands that are finer read as texture (assumed). */
    private static final double WIDEST_UNSEEN_MILLIMETRES = 1;

    PrintedArt {
        screens = List.copyOf(screens);
    }

    static PrintedArt of(Origin origin, GreyPlane art, double pixelsPerInch) {
        return new PrintedArt(
                origin,
                origin == Origin.CONTINUOUS || origin == Origin.LINE ? List.of() : ScreenSearch.in(art),
                pixelsPerInch);
    }

    /** The art without its dots, where that is asked for and there are any; whoever opened the art closes it. */
    Optional<CellMeans> withoutDots(GreyPlane art) {
        return origin == Origin.PRINTED && !screens.isEmpty()
                ? Optional.of(new CellMeans(art, screens))
                : Optional.empty();
    }

    /** What the printmaker should hear of it. */
    List<String> remarks() {
        if (screens.isEmpty()) {
            return origin == Origin.PRINTED
                    ? List.of("no screen of dots was found in the art, and nothing was taken out of it")
                    : List.of();
        }
        String found = screens.stream().map(this::words).collect(Collectors.joining("; "));
        if (origin == Origin.AUTOMATIC) {
            boolean close = screens.stream().anyMatch(dots -> dots.periodPixels() < CellMeans.LEAST_PERIOD_PIXELS);
            return List.of("the art looks like a print, dots " + found
                    + elsewhere()
                    + (close
                            ? ": too close in this scan to be taken out, so scan it finer;"
                            : ": --source printed takes them out,")
                    + " --source continuous leaves them without a word");
        }
        double drift = screens.stream().mapToDouble(PrintedScreen::drift).max().orElse(0);
        String taken = "the print's dots were taken out: " + found + elsewhere();
        return drift > MOST_DRIFT
                ? List.of(
                        taken,
                        "the page does not lie flat, its dots' distance differs by "
                                + Refusal.plain(Math.rint(1000 * drift) / 10)
                                + " % over it, so that some may stay: press it flat and scan it again")
                : List.of(taken);
    }

    /** What becomes of text, or of whatever else on the page was printed without dots. */
    private String elsewhere() {
        return screens.get(0).share() < ALL_OVER
                ? ", and not elsewhere, where taking them out softens edges by as much as a dot: print pictures and text"
                        + " apart (--crop)"
                : "";
    }

    /**
     * What dots left in do on a film of dots.
     *
     * @param turnedDegrees how far the art is turned clockwise
     * @param pixelMillimetres an art pixel on the plate
     */
    Optional<String> beat(HalftoneGeometry film, double turnedDegrees, double pixelMillimetres) {
        if (origin == Origin.PRINTED || screens.isEmpty()) {
            return Optional.empty();
        }
        PrintedScreen dots = screens.get(0);
        double lines = 10 / (dots.periodPixels() * pixelMillimetres);
        double bands = ScreenBeat.millimetres(
                lines, dots.angleDegrees() - turnedDegrees, film.linesPerCentimetre(), film.angleDegrees());
        return bands < WIDEST_UNSEEN_MILLIMETRES
                ? Optional.empty()
                : Optional.of(String.format(
                        Locale.ROOT,
                        "the print's dots, %.1f lines/cm on the plate, beat with the film's %.1f in bands %s wide: take"
                                + " them out (--source printed), or use a grain, which beats with nothing",
                        lines,
                        film.linesPerCentimetre(),
                        bands > 1000 ? "wider than the plate" : Refusal.plain(Math.rint(bands * 10) / 10) + " mm"));
    }

    private String words(PrintedScreen screen) {
        String ruling = pixelsPerInch > 0
                ? String.format(
                        Locale.ROOT,
                        " (%.2f lines/cm at the file's %s ppi)",
                        screen.linesPerCentimetre(pixelsPerInch),
                        Refusal.plain(Math.rint(pixelsPerInch * 10) / 10))
                : "";
        return String.format(
                Locale.ROOT,
                "%.2f pixels apart%s at %.1f degrees, seen in %.0f %% of the places looked at",
                screen.periodPixels(),
                ruling,
                screen.angleDegrees(),
                100 * screen.share());
    }
}
