package greyground.app.gather;

import greyground.app.files.Program;
import greyground.app.files.SafeFile;
import greyground.app.gather.FilmsOnHand.OneFilm;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.GatheredRows;
import greyground.film.sheet.GatheredSheet;
import greyground.film.sheet.GatheredSheet.Laid;
import greyground.film.sheet.Legend;
import greyground.film.sheet.Sheet;
import greyground.film.sheet.TurnedRows;
import greyground.finding.Findings;
import greyground.json.JsonText;
import greyground.output.Attachment;
import greyground.output.FilmDocument;
import greyground.output.FilmDocument.Film;
import greyground.output.FilmPdf;
import greyground.output.PlanDocument;
import greyground.plan.ExposurePlan;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Size;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import java.io.IOException;
import java.nio.channels.Channels;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Lays finished films out on sheets of film, pixel by pixel as they are, with their plans behind. */
public final class GatherWork {
    /** Seen on the light table, and no wider than a scalpel's cut (assumed). */
    private static final double CUT_MILLIMETRES = 0.15;

    /** Of a film's number beside the line to cut along. */
    private static final double NUMBER_MILLIMETRES = 1.2;

    /** Films are read from the top in one go; a second thread would read them again. */
    private static final int THREADS = 1;

    private GatherWork() {}

    /**
     * What is asked.
     *
     * @param films PDFs, two or more
     * @param sheet of film, as it is given
     * @param gapMillimetres between films, within {@link GatheredSheet#GAP}
     * @param mostSheets 1 or more
     * @param turns whether films may be turned by a quarter
     */
    public record Order(List<Path> films, Size sheet, double gapMillimetres, int mostSheets, boolean turns) {
        public Order {
            films = List.copyOf(films);
            if (films.size() < 2) {
                throw Refusal.use("1 film is given: give two or more to gather");
            }
            GatheredSheet.GAP.check("gap", gapMillimetres);
            Refusal.checkRange("number of sheets", mostSheets, 1, 99, "", "gather the rest by themselves");
        }
    }

    /** Writes the sheets as one PDF, whole or not at all. */
    public static Findings gather(Order order, Path pdf, Progress progress) throws IOException {
        try (FilmsOnHand hand = FilmsOnHand.open(order.films(), order.turns())) {
            List<GatheredSheet> sheets = laid(order, hand);
            FilmDocument document =
                    new FilmDocument(films(sheets, hand), head(hand), hand.plans(), attachments(sheets, hand));
            SafeFile.write(
                    "sheet",
                    pdf,
                    channel -> FilmPdf.write(document, Channels.newOutputStream(channel), THREADS, progress));
            return findings(order, sheets, hand);
        }
    }

    private static List<GatheredSheet> laid(Order order, FilmsOnHand hand) {
        FilmPixels pixels = hand.pixels();
        Size sheet = order.sheet();
        double margin = hand.marginMillimetres();
        List<OneFilm> films = hand.films();
        List<GatheredSheet> sheets = GatheredSheet.lay(
                        films.stream().map(OneFilm::piece).toList(), pixels, sheet, margin, order.gapMillimetres())
                .orElseThrow(() -> tooLarge(order, hand));
        if (sheets.size() > order.mostSheets()) {
            throw Refusal.failure("the " + films.size() + " films take " + sheets.size() + " sheets of " + sheet
                    + ", " + number(share(films, pixels, sheet) * 100) + " % of one sheet by their area alone: "
                    + (order.mostSheets() == 1 ? "add --most-sheets " : "raise --most-sheets to ") + sheets.size()
                    + ", or choose a larger sheet");
        }
        return sheets;
    }

    private static Refusal tooLarge(Order order, FilmsOnHand hand) {
        FilmPixels pixels = hand.pixels();
        double border = 2 * hand.marginMillimetres() + order.gapMillimetres();
        OneFilm largest = hand.films().stream()
                .filter(film -> GatheredSheet.lay(
                                List.of(film.piece()),
                                pixels,
                                order.sheet(),
                                hand.marginMillimetres(),
                                order.gapMillimetres())
                        .isEmpty())
                .findFirst()
                .orElseThrow();
        return Refusal.failure(largest.pdf().getFileName() + " is a film of "
                + number(pixels.acrossMillimetres(largest.rows().width())) + " x "
                + number(pixels.downMillimetres(largest.rows().height())) + " mm; a sheet of " + order.sheet()
                + " takes up to " + number(order.sheet().widthMillimetres() - border) + " x "
                + number(order.sheet().heightMillimetres() - border)
                + " mm inside its margin and the line to cut along: choose a larger sheet");
    }

    private static double share(List<OneFilm> films, FilmPixels pixels, Size sheet) {
        double area = films.stream()
                .mapToDouble(film -> pixels.acrossMillimetres(film.rows().width())
                        * pixels.downMillimetres(film.rows().height()))
                .sum();
        return area / (sheet.widthMillimetres() * sheet.heightMillimetres());
    }

    private static List<Film> films(List<GatheredSheet> sheets, FilmsOnHand hand) throws IOException {
        FilmPixels pixels = hand.pixels();
        List<Film> pages = new ArrayList<>();
        for (GatheredSheet sheet : sheets) {
            List<FilmRows> rows = new ArrayList<>();
            List<Legend> legends = new ArrayList<>();
            for (int i = 0; i < sheet.films().size(); i++) {
                Laid laid = sheet.films().get(i);
                OneFilm film = hand.films().get(laid.index());
                rows.add(laid.turned() ? TurnedRows.of(film.rows()) : film.rows());
                for (Legend own : film.legends()) {
                    legends.add(laid.legend(own, pixels, film.heightMillimetres()));
                }
                legends.add(number(laid, pixels));
            }
            PixelRect whole = new PixelRect(0, 0, sheet.widthPixels(), sheet.heightPixels());
            int line = Math.max(1, pixels.across(CUT_MILLIMETRES));
            pages.add(new Film(
                    new Sheet(pixels, sheet.widthPixels(), sheet.heightPixels(), whole, whole, legends),
                    new GatheredRows(sheet, rows, line)));
        }
        return pages;
    }

    /** The film's number, above its top left corner. */
    private static Legend number(Laid laid, FilmPixels pixels) {
        return new Legend(
                pixels.resolution().millimetres(laid.place().left()),
                pixels.resolution().millimetres(laid.place().top()) - NUMBER_MILLIMETRES / 4,
                NUMBER_MILLIMETRES,
                0,
                String.valueOf(laid.index() + 1));
    }

    /** Says what the whole is; it has no plan of its own. */
    private static PlanDocument head(FilmsOnHand hand) {
        List<PlanDocument> plans = hand.plans();
        LocalDate latest = plans.stream()
                .map(PlanDocument::date)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        return new PlanDocument(
                String.join(", ", plans.stream().map(PlanDocument::title).toList()),
                hand.films().size() + " films",
                latest,
                Program.words(),
                List.of(),
                List.of(),
                new ExposurePlan(List.of(), "", ""));
    }

    private static List<Attachment> attachments(List<GatheredSheet> sheets, FilmsOnHand hand) {
        List<Attachment> all = new ArrayList<>(hand.attachments());
        all.add(new Attachment(
                Attachment.SHEET,
                "application/json",
                JsonText.print(
                        JsonText.file("sheet", 1).setAll(places(sheets, hand).tree())),
                "which film lies where",
                Attachment.Relationship.DATA));
        return all;
    }

    /** Where each film lies, a row for each. */
    private static Findings places(List<GatheredSheet> sheets, FilmsOnHand hand) {
        FilmPixels pixels = hand.pixels();
        List<Findings> rows = new ArrayList<>();
        for (int i = 0; i < sheets.size(); i++) {
            for (Laid laid : sheets.get(i).films()) {
                OneFilm film = hand.films().get(laid.index());
                PixelRect place = laid.place();
                double left = pixels.acrossMillimetres(place.left());
                double top = pixels.downMillimetres(place.top());
                double across = pixels.acrossMillimetres(place.width());
                double down = pixels.downMillimetres(place.height());
                String words = laid.index() + 1 + "  " + film.name() + ", " + number(across) + " x " + number(down)
                        + " mm, at " + number(left) + ", " + number(top) + " mm"
                        + (laid.turned() ? ", turned by a quarter" : "")
                        + (sheets.size() > 1 ? ", on sheet " + (i + 1) : "");
                rows.add(new Findings()
                        .say("words", words)
                        .put("number", laid.index() + 1)
                        .put("film", film.name())
                        .put("sheet", i + 1)
                        .put("leftMillimetres", left)
                        .put("topMillimetres", top)
                        .put("widthMillimetres", across)
                        .put("heightMillimetres", down)
                        .put("turned", laid.turned()));
            }
        }
        return new Findings().rows("films", rows);
    }

    private static Findings findings(Order order, List<GatheredSheet> sheets, FilmsOnHand hand) {
        FilmPixels pixels = hand.pixels();
        GatheredSheet last = sheets.get(sheets.size() - 1);
        double free = order.sheet().heightMillimetres() - pixels.downMillimetres(last.usedHeightPixels());
        double share = share(hand.films(), pixels, order.sheet()) / sheets.size();
        Findings findings = new Findings()
                .say(
                        "sheets",
                        (sheets.size() == 1 ? "1 sheet of " : sheets.size() + " sheets of ") + order.sheet() + ", "
                                + hand.films().size() + " films at "
                                + Refusal.plain(pixels.resolution().dotsPerInch()) + " dpi, "
                                + Math.round(share * 100) + " % of it film",
                        sheets.size());
        findings.rows(
                "films",
                places(sheets, hand).words("films"),
                places(sheets, hand).rows("films"));
        return findings.say(
                        "free",
                        number(free) + " mm at the foot of " + (sheets.size() == 1 ? "the sheet" : "the last sheet")
                                + " hold nothing",
                        free)
                .say("print", FilmDocument.paper(sheets.size()))
                .list("notes", hand.notes());
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
