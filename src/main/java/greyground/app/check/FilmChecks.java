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
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.Crew;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Checks a job's films before any copper is spent: open bite, lands that will vanish, openings that will stay shut, a black too
 * thin for the exposure, a film out of scale. Films of hard dots are inspected bit by bit; a continuous-tone film has no dots
 * to inspect.
 */
public final class FilmChecks {
    private static final int BAND_ROWS = 256;

    private final List<Inspected> films;
    private final FilmBlack black;
    private final List<PlateWarning> warnings;

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

    private FilmChecks(List<Inspected> films, FilmBlack black, List<PlateWarning> warnings) {
        this.films = List.copyOf(films);
        this.black = black;
        this.warnings = List.copyOf(warnings);
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
        FilmBlack black = FilmBlack.of(workshop);
        List<PlateWarning> found = new ArrayList<>();
        List<PlateWarning> ofFilms = new ArrayList<>(FilmWarnings.black(black));
        List<Inspected> inspected = new ArrayList<>();
        int bits = (int) pages.stream().filter(page -> page.bits() == 1).count();
        for (int i = 0; i < pages.size(); i++) {
            Page page = pages.get(i);
            String film = pages.size() == 1 ? "" : "film " + (i + 1) + ": ";
            ofFilms.addAll(FilmWarnings.size(
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
                    found.addAll(FilmWarnings.findings(
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

    /** What was found on each film of hard dots. */
    public List<Inspected> films() {
        return films;
    }

    /** The film's black against what the exposure needs. */
    public FilmBlack black() {
        return black;
    }

    /** What the plate will not keep and where, most pressing first, then what concerns whole films; empty where nothing does. */
    public List<PlateWarning> warnings() {
        return warnings;
    }
}
