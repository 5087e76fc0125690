package greyground.app.gather;

import greyground.app.bite.PlannedPlate;
import greyground.app.files.KeptFiles;
import greyground.film.job.Job;
import greyground.film.sheet.Legend;
import greyground.film.sheet.StripPacking.Piece;
import greyground.grain.Grain;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.output.FilmPdfReader.ReadFilm;
import greyground.output.PlanDocument;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.workshop.FilmPrinter;
import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/** Film PDFs that lie ready to be gathered. Whoever opens it closes it; one thread. */
final class FilmsOnHand implements Closeable {
    private static final Map<String, String> CARRIED = new TreeMap<>(Map.of(
            Attachment.JOB, "the job",
            Attachment.WORKSHOP, "the workshop's numbers",
            Attachment.CURVE, "the tone curve",
            Attachment.CHART, "what lies where on the test plate",
            Attachment.PLAN, "the exposure and bite plan",
            Attachment.PLAN_TEXT, "the exposure and bite plan, to read"));

    private final List<Path> pdfs = new ArrayList<>();
    private final List<FilmPdfReader> readers = new ArrayList<>();
    private final List<OneFilm> films = new ArrayList<>();
    private final List<PlannedPlate> plates = new ArrayList<>();

    /**
     * A film page.
     *
     * @param pdf that holds it
     * @param plate its place among the PDFs, from 0
     * @param page its place in the PDF, from 0
     * @param rows its pixels
     * @param legends its words
     * @param mayTurn whether it may lie turned by a quarter
     */
    record OneFilm(Path pdf, int plate, int page, FilmOnFile rows, List<Legend> legends, boolean mayTurn) {
        /** As people call it. */
        String name() {
            return pdf.getFileName() + (page > 0 ? ", its film " + (page + 1) : "");
        }

        Piece piece() {
            return new Piece(rows.width(), rows.height(), mayTurn);
        }

        double heightMillimetres() {
            return rows.film().resolution().millimetres(rows.height());
        }
    }

    /**
     * Opens films; refused if they are not of one resolution.
     *
     * @param turns whether any may be turned at all
     */
    static FilmsOnHand open(List<Path> pdfs, boolean turns) throws IOException {
        FilmsOnHand hand = new FilmsOnHand();
        try {
            for (Path pdf : pdfs) {
                hand.add(pdf, turns);
            }
            hand.checkAlike();
            return hand;
        } catch (RuntimeException unfit) {
            hand.close();
            throw unfit;
        }
    }

    private void add(Path pdf, boolean turns) {
        FilmPdfReader reader = FilmPdfReader.open(pdf);
        readers.add(reader);
        pdfs.add(pdf);
        PlannedPlate plate = PlannedPlate.ofFilm(pdf);
        boolean mayTurn =
                turns && mayTurn(plate, reader.attachment(Attachment.CHART).isPresent());
        List<ReadFilm> pages = reader.films();
        for (int i = 0; i < pages.size(); i++) {
            films.add(new OneFilm(
                    pdf, plates.size(), i, new FilmOnFile(reader, i, pages.get(i)), reader.legends(i), mayTurn));
        }
        plates.add(plate);
    }

    /**
     * A printer may be true across and not along its travel, and lays lines along it otherwise than across (common practice, no source); a test
     * plate measures just that.
     */
    private static boolean mayTurn(PlannedPlate plate, boolean isTestPlate) {
        Job job = plate.job();
        boolean lines = job.grain() instanceof Grain.Halftone halftone && halftone.shape() == Grain.DotShape.LINE;
        FilmPrinter printer = plate.workshop().filmPrinter();
        return !isTestPlate
                && !lines
                && printer.scaleX().value() == printer.scaleY().value();
    }

    private void checkAlike() {
        OneFilm first = films.get(0);
        for (OneFilm film : films) {
            double dots = film.rows.film().resolution().dotsPerInch();
            double firstDots = first.rows.film().resolution().dotsPerInch();
            if (dots != firstDots) {
                throw Refusal.failure(film.pdf.getFileName() + " has " + Refusal.plain(dots) + " dpi and "
                        + first.pdf.getFileName() + " " + Refusal.plain(firstDots)
                        + ": films on one sheet have one resolution, make one of them anew with --resolution");
            }
            if (film.rows.bitsPerSample() != first.rows.bitsPerSample()) {
                throw Refusal.failure(first.name() + " is a film " + kind(first) + " and " + film.name() + " one "
                        + kind(film) + ": gather each kind by itself");
            }
        }
    }

    private static String kind(OneFilm film) {
        int bits = film.rows.bitsPerSample();
        return bits == 1 ? "of dots" : "of continuous tone in " + bits + " bits";
    }

    List<OneFilm> films() {
        return films;
    }

    List<PlannedPlate> plates() {
        return plates;
    }

    /** Of the printer that the first of them was made for. */
    FilmPixels pixels() {
        FilmPrinter printer = plates.get(0).workshop().filmPrinter();
        return new FilmPixels(
                films.get(0).rows.film().resolution(),
                printer.scaleX().value(),
                printer.scaleY().value());
    }

    /** The widest that any of their printers leaves clear. */
    double marginMillimetres() {
        return plates.stream()
                .mapToDouble(plate ->
                        plate.workshop().filmPrinter().marginMillimetres().value())
                .max()
                .orElse(0);
    }

    List<PlanDocument> plans() {
        return plates.stream().map(PlannedPlate::pages).toList();
    }

    /** What each PDF carries, its name behind the PDF's number. */
    List<Attachment> attachments() {
        List<Attachment> all = new ArrayList<>();
        for (int i = 0; i < pdfs.size(); i++) {
            Path pdf = pdfs.get(i);
            String number = i + 1 + "-";
            CARRIED.forEach((name, what) -> KeptFiles.carried(pdf, name)
                    .ifPresent(text -> all.add(new Attachment(
                            number + name,
                            name.endsWith(".txt") ? "text/plain" : "application/json",
                            text,
                            what + " of " + pdf.getFileName(),
                            Attachment.Relationship.DATA))));
        }
        return all;
    }

    /** What is worth a look before the sheet is printed. */
    List<String> notes() {
        List<String> notes = new ArrayList<>();
        Set<String> sides = new HashSet<>();
        Set<Double> scales = new HashSet<>();
        for (PlannedPlate plate : plates) {
            sides.add(plate.job().placing().readingSide().words());
            scales.add(plate.workshop().filmPrinter().scaleX().value());
            scales.add(plate.workshop().filmPrinter().scaleY().value());
        }
        if (sides.size() > 1) {
            notes.add("not all films lie the same way up on their plates: each says so in its own words");
        }
        if (scales.size() > 1 && plates.size() > 1) {
            notes.add("the films are drawn for printers of different scale: measure the ruler of each");
        }
        return notes;
    }

    @Override
    public void close() throws IOException {
        for (FilmPdfReader reader : readers) {
            reader.close();
        }
    }
}
