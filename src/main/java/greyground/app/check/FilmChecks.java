package greyground.app.check;

import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.output.FilmDocument;
import greyground.output.FilmPdfReader;
import greyground.plan.FilmBlack;
import greyground.plate.Exposure;
import greyground.plate.PlateConditions;
import greyground.plate.PlateProcess;
import greyground.plate.inspect.FilmFindings;
import greyground.plate.inspect.FilmInspection;
import greyground.plate.inspect.FilmLimits;
import greyground.plate.inspect.FilmPitch;
import greyground.quantity.FilmPixels;
import greyground.quantity.Offset;
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.Crew;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Checks a job's films before any copper is spent: open bite, lands that will vanish, openings that will stay shut, a black too
 * thin for the exposure, a film out of scale. Films of hard dots are inspected bit by bit; a continuous-tone film has no dots
 * to inspect.
 *
 * @param films what was found on each film of hard dots
 * @param black the film's black against what the exposure needs
 * @param warnings what the plate will not keep and where, most pressing first, then what concerns whole films; empty where nothing does
 */
public record FilmChecks(List<FilmChecks.Inspected> films, FilmBlack black, List<PlateWarning> warnings) {
    private static final String BLACK = "filmPrinter.blackUvDensity";

    /** Dots and lands round off by about as much anyhow (assumed). */
    private static final double SHARE_UNSAID = 0.02;

    /** A film whose 100 mm ruler is out by more than this is printed again: 0.2 mm in 100 (common practice). */
    private static final double RULER_TOLERANCE = 0.002;

    private static final int BAND_ROWS = 256;

    /**
     * One film of hard dots.
     *
     * @param number of the film, from 1
     * @param through which exposure it lies in
     * @param findings places count from the top left of the plate's outline on this film; of a tile, of the part it shows
     */
    public record Inspected(int number, Exposure.Sheet through, FilmFindings findings) {}

    /** Hands a film's rows to a taker, in order. */
    @FunctionalInterface
    private interface Feed {
        void to(Bands.Taker<byte[]> taker, Progress progress) throws IOException;
    }

    /** A film to look at, wherever its rows come from. */
    private record Page(int width, int height, int bits, FilmPixels pixels, PixelRect plate, Feed feed) {}

    public FilmChecks {
        films = List.copyOf(films);
        warnings = List.copyOf(warnings);
    }

    /** Checks films composed for a job, bitten as planned. */
    public static FilmChecks of(Job job, Workshop workshop, List<FilmDocument.Film> films, Progress progress)
            throws IOException {
        List<Page> pages = films.stream()
                .map(film -> new Page(
                        film.rows().width(),
                        film.rows().height(),
                        film.rows().bitsPerSample(),
                        workshop.filmPrinter().pixels(film.sheet().resolution()),
                        film.sheet().plate(),
                        (taker, part) -> Bands.inOrder(
                                film.rows().height(), BAND_ROWS, Crew.allCores(), film.rows()::maker, taker, part)))
                .toList();
        return checked(job, workshop, pages, progress);
    }

    /** Checks the films of a PDF, bitten as planned. */
    public static FilmChecks of(Job job, Workshop workshop, FilmPdfReader reader, Progress progress)
            throws IOException {
        List<Page> pages = new ArrayList<>();
        for (FilmPdfReader.ReadFilm film : reader.films()) {
            int index = pages.size();
            pages.add(new Page(
                    film.widthPixels(),
                    film.heightPixels(),
                    film.bitsPerSample(),
                    workshop.filmPrinter().pixels(film.resolution()),
                    film.plate(),
                    (taker, part) -> reader.readRows(index, BAND_ROWS, (first, count, band) -> {
                        taker.take(first, count, band);
                        part.done((double) (first + count) / film.heightPixels());
                    })));
        }
        return checked(job, workshop, pages, progress);
    }

    private static FilmChecks checked(Job job, Workshop workshop, List<Page> pages, Progress progress)
            throws IOException {
        PlateConditions conditions = JobPlate.conditions(workshop, job, workshop.usualDepthMicrometres());
        FilmBlack black = FilmBlack.of(workshop, job.process());
        List<PlateWarning> found = new ArrayList<>();
        List<PlateWarning> ofFilms = new ArrayList<>(black(black));
        List<Inspected> inspected = new ArrayList<>();
        int bits = (int) pages.stream().filter(page -> page.bits() == 1).count();
        for (int i = 0; i < pages.size(); i++) {
            Page page = pages.get(i);
            String film = pages.size() == 1 ? "" : "film " + (i + 1) + ": ";
            ofFilms.addAll(size(
                    film,
                    job,
                    page.pixels(),
                    page.plate(),
                    pages.size() > 1 && job.placing().tiled()));
            if (page.bits() == 1) {
                // Photogravure's positive is continuous; its dots are all on the screen film.
                Exposure.Sheet through = job.process() instanceof PlateProcess.Photogravure
                        ? Exposure.Sheet.SCREEN
                        : Exposure.Sheet.POSITIVE;
                try {
                    FilmLimits limits = FilmLimits.of(conditions, through);
                    double from = (double) inspected.size() / bits;
                    Progress part = progress.part(from, (inspected.size() + 1.0) / bits);
                    FilmFindings findings = inspected(page, limits, part);
                    inspected.add(new Inspected(i + 1, through, findings));
                    found.addAll(findings(
                            film,
                            findings,
                            job.placing().readingSide().mirrored()
                                    ? page.pixels()
                                            .acrossMillimetres(page.plate().width())
                                    : 0));
                } catch (Refusal nothingToInspect) {
                    // An exposure that hardens all or nothing is said like any other fault of the film.
                    if (nothingToInspect.kind() != Refusal.Kind.FAILURE) {
                        throw nothingToInspect;
                    }
                    ofFilms.add(PlateWarning.of("film", film + nothingToInspect.getMessage(), ""));
                }
            }
        }
        found.addAll(ofFilms);
        return new FilmChecks(inspected, black, found);
    }

    private static FilmFindings inspected(Page page, FilmLimits limits, Progress progress) throws IOException {
        PixelRect plate = page.plate();
        if ((long) plate.left() + plate.width() > page.width() || (long) plate.top() + plate.height() > page.height()) {
            throw Refusal.failure("the plate's outline lies at " + plate.left() + ", " + plate.top() + " and measures "
                    + plate.width() + " x " + plate.height() + " pixels, not within the film of " + page.width() + " x "
                    + page.height() + ": give a film as this program wrote it");
        }
        try (FilmInspection inspection = new FilmInspection(
                limits,
                new FilmPitch(
                        page.pixels().pitchAcrossMicrometres(), page.pixels().pitchDownMicrometres()),
                page.width(),
                page.height(),
                new PixelRect(plate.left(), plate.top(), plate.width(), plate.height()),
                Crew.allCores())) {
            page.feed().to(inspection, progress);
            return inspection.finish();
        }
    }

    private static List<PlateWarning> black(FilmBlack black) {
        return black.missing() == 0
                ? List.of()
                : List.of(PlateWarning.of(
                        "thin-black",
                        String.format(
                                Locale.ROOT,
                                "the film's black is %.2f D, the exposure needs %.2f D: print a denser black, or"
                                        + " hold %.1f wedge steps fewer",
                                black.onFilm(),
                                black.needed(),
                                black.missingSteps()),
                        BLACK));
    }

    /** A film whose plate is not the job's, as after printing to another size; tiles show only parts of the plate. */
    private static List<PlateWarning> size(String film, Job job, FilmPixels pixels, PixelRect plate, boolean tile) {
        double width = pixels.acrossMillimetres(plate.width());
        double height = pixels.downMillimetres(plate.height());
        double across = width / job.plate().widthMillimetres();
        double down = height / job.plate().heightMillimetres();
        // Half a pixel at each edge is rounding.
        boolean same = Math.abs(width - job.plate().widthMillimetres()) <= pixels.acrossMillimetres(1)
                && Math.abs(height - job.plate().heightMillimetres()) <= pixels.downMillimetres(1);
        return tile || same || (isTrue(across) && isTrue(down))
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
    private static List<PlateWarning> findings(String film, FilmFindings found, double mirroredIn) {
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

    /** Whether a scale, measured over meant, lies within the tolerance of a ruler. */
    private static boolean isTrue(double scale) {
        // A ruler read at the very limit must not fail on the last bit of a division.
        return Math.abs(scale - 1) <= RULER_TOLERANCE + 1e-9;
    }
}
