package greyground.app.print;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.app.recipe.ArtSource;
import greyground.app.recipe.JobWords;
import greyground.app.recipe.PositiveWork;
import greyground.film.job.Job;
import greyground.film.sheet.PrintPaper;
import greyground.film.sheet.SheetOnPaper;
import greyground.film.sheet.SheetOnPaper.SheetSize;
import greyground.output.ExternalTool;
import greyground.output.FilmPdfReader;
import greyground.output.FilmPdfReader.ReadFilm;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import javax.print.StreamPrintServiceFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A film through Java's own printing into PostScript, as on a printer that takes it; Ghostscript, an independent interpreter, then says
 * what lies on the paper.
 */
class FilmPrintingIT {
    private static final Path ART = Path.of("testimages/leaf-alpha.png");

    @TempDir
    Path folder;

    private static PrinterAtHand printer(OutputStream out) {
        StreamPrintServiceFactory[] known = StreamPrintServiceFactory.lookupStreamPrintServiceFactories(
                PrinterAtHand.PAGES, "application/postscript");
        return PrinterAtHand.of(known[0].getPrintService(out));
    }

    private static Job job(int dotsPerInch, String... words) {
        Map<String, String> given = new HashMap<>(
                Map.of("plate", "60x40mm", "resolution", dotsPerInch + "dpi", "title", "Leaf", "reserve", "0"));
        for (int i = 0; i < words.length; i += 2) {
            given.put(words[i], words[i + 1]);
        }
        return new JobWords(given)
                .job(Optional.empty(), ArtSource.open(ART).source(1), Workshop.assumed(), "2026-01-01");
    }

    private Path film(Job job) throws Exception {
        Path pdf = folder.resolve("film.pdf");
        PositiveWork.prepare(
                ArtSource.open(ART), job, Workshop.assumed(), Optional.of(pdf), Optional.empty(), Progress.NONE);
        return pdf;
    }

    /** A page as Ghostscript sets it, at one of its pixels for one of the film's; true is black. */
    private record Page(int width, int height, byte[] bits) {
        boolean black(int x, int y) {
            int at = y * ((width + 7) / 8) + (x >> 3);
            return x >= 0 && y >= 0 && x < width && y < height && (bits[at] & (0x80 >> (x & 7))) != 0;
        }
    }

    private List<Page> pages(Path postScript, int dotsPerInch) throws Exception {
        ExternalTool.run(
                folder,
                "gs",
                "-q",
                "-dBATCH",
                "-dNOPAUSE",
                "-dSAFER",
                "-sDEVICE=pbmraw",
                "-r" + dotsPerInch,
                "-sOutputFile=page%d.pbm",
                postScript.toString());
        List<Page> pages = new ArrayList<>();
        for (int i = 1; Files.exists(folder.resolve("page" + i + ".pbm")); i++) {
            byte[] file = Files.readAllBytes(folder.resolve("page" + i + ".pbm"));
            int at = 0;
            int[] size = new int[2];
            int found = 0;
            while (found < 3) {
                int end = at;
                while (file[end] != '\n') {
                    end++;
                }
                String line = new String(file, at, end - at, java.nio.charset.StandardCharsets.US_ASCII);
                at = end + 1;
                for (String word : line.startsWith("#") || line.equals("P4") ? new String[0] : line.split(" ", -1)) {
                    size[found++] = Integer.parseInt(word);
                }
                found = found == 2 ? 3 : found;
            }
            pages.add(new Page(size[0], size[1], Arrays.copyOfRange(file, at, file.length)));
        }
        return pages;
    }

    private Path print(Path pdf, PrintPaper paper, boolean withPlan) throws Exception {
        Path postScript = folder.resolve("film.ps");
        try (OutputStream out = Files.newOutputStream(postScript)) {
            FilmPrinting.print(pdf, "Leaf", new FilmPrinting.Order(printer(out), paper, 1, withPlan), Progress.NONE);
        }
        return postScript;
    }

    private static PrintPaper paper(SheetSize size, String name) {
        return printer(OutputStream.nullOutputStream()).papersFor(size).stream()
                .filter(each -> each.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Every black pixel of the film is black on paper, and nothing else is but the words. An interpreter may round the film's place to the
     * next pixel, but all of it alike.
     */
    private void checkPixels(Path pdf, Page page, SheetOnPaper place) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(pdf)) {
            ReadFilm film = reader.films().get(0);
            int left = film.resolution().pixels(place.leftMillimetres());
            int top = film.resolution().pixels(place.topMillimetres());
            // Lengthwise, the film's left edge lies towards the paper's foot.
            int above = film.resolution().pixels(297 - place.leftMillimetres()) - film.widthPixels();
            int words = film.plate().bottom() + film.resolution().pixels(31.5);
            long[] black = new long[2];
            long[] differ = new long[9];
            reader.readRows(0, 64, (first, count, band) -> {
                for (int y = first; y < first + count; y++) {
                    for (int x = 0; x < film.widthPixels(); x++) {
                        int at = (y - first) * film.bytesPerRow() + (x >> 3);
                        boolean dot = (band[at] & (0x80 >> (x & 7))) != 0;
                        int acrossPage = place.lengthwise() ? top + y : left + x;
                        int downPage = place.lengthwise() ? above + film.widthPixels() - 1 - x : top + y;
                        black[0] += dot ? 1 : 0;
                        black[1] += y >= words && page.black(acrossPage, downPage) ? 1 : 0;
                        for (int shift = 0; shift < 9 && y < words; shift++) {
                            // A place that a thousand pixels speak against needs no more of them.
                            if (differ[shift] < 1000) {
                                boolean seen = page.black(acrossPage + shift % 3 - 1, downPage + shift / 3 - 1);
                                differ[shift] += dot != seen ? 1 : 0;
                            }
                        }
                    }
                }
            });
            assertTrue(black[0] > 100_000, "a film without black proves nothing: " + black[0]);
            assertTrue(black[1] > 1000, "the words are printed too: " + black[1]);
            assertEquals(0, Arrays.stream(differ).min().orElseThrow(), Arrays.toString(differ));
        }
    }

    /** The platform prints in steps of 1/300 inch, into which these resolutions go 5, 5 and 15 times at 12, 24 and 127 pixels. */
    static List<Integer> resolutions() {
        return Sweep.of(List.of(720, 1440));
    }

    @ParameterizedTest
    @MethodSource("resolutions")
    void everyPixelOfTheFilmLandsOnThePaperAtTrueSize(int dotsPerInch) throws Exception {
        Path pdf = film(job(dotsPerInch));
        SheetSize size = FilmPrinting.size(pdf);
        PrintPaper a4 = paper(size, "a4");
        assertEquals(210, a4.width(), 0.1);
        List<Page> pages = pages(print(pdf, a4, true), dotsPerInch);
        assertEquals(297 / 25.4 * dotsPerInch, pages.get(0).height(), 4);
        assertTrue(pages.size() > 1, "the plan follows");
        checkPixels(pdf, pages.get(0), SheetOnPaper.laid(size, a4));
    }

    @ParameterizedTest
    @MethodSource("resolutions")
    void aWideFilmIsLaidLengthwise(int dotsPerInch) throws Exception {
        Path pdf = film(job(dotsPerInch, "plate", "170x41mm"));
        SheetSize size = FilmPrinting.size(pdf);
        SheetOnPaper place = SheetOnPaper.laid(size, paper(size, "a4"));
        assertTrue(place.lengthwise());
        checkPixels(
                pdf, pages(print(pdf, paper(size, "a4"), false), dotsPerInch).get(0), place);
    }

    @Test
    void paperOfTheSheetsOwnSizeTakesAllOfIt() throws Exception {
        int dotsPerInch = 2540;
        Path pdf = film(job(dotsPerInch, "plate", "30x30mm"));
        SheetSize size = FilmPrinting.size(pdf);
        List<Page> pages = pages(print(pdf, PrinterAtHand.ownSize(size), false), dotsPerInch);
        assertEquals(1, pages.size());
        assertEquals(size.widthMillimetres() / 25.4 * dotsPerInch, pages.get(0).width(), 35);
        checkPixels(pdf, pages.get(0), SheetOnPaper.laid(size, PrinterAtHand.ownSize(size)));
    }

    @Test
    void whatDoesNotGoOnThePaperIsRefusedBeforeAnythingIsPrinted() throws Exception {
        Path pdf = film(job(720, "plate", "170x40mm"));
        PrintPaper a5 = paper(FilmPrinting.size(pdf), "a5");
        Refusal refusal = assertThrows(Refusal.class, () -> print(pdf, a5, false));
        assertTrue(String.valueOf(refusal.getMessage()).contains("218.0 x "), refusal.getMessage());
        assertTrue(String.valueOf(refusal.getMessage()).contains(a5.reach()), refusal.getMessage());
        assertEquals(0, held(pdf), "the refused film is let go, so that it can be moved or made anew");
    }

    /** How many times this program holds a file open, where the system lists that (Linux, proc(5)). */
    private static long held(Path file) throws Exception {
        Path open = Path.of("/proc/self/fd");
        if (!Files.isDirectory(open)) {
            return 0;
        }
        long held = 0;
        try (var all = Files.newDirectoryStream(open)) {
            for (Path each : all) {
                held += Files.readSymbolicLink(each).equals(file.toRealPath()) ? 1 : 0;
            }
        }
        return held;
    }

    @Test
    void printingStopsWhenToldToAndLeavesNoFilmBehind() {
        PrinterAtHand printer = printer(OutputStream.nullOutputStream());
        Job job = job(720);
        PrintPaper paper = paper(new SheetSize(174, 120, job.resolution()), "a4");
        assertThrows(
                CancellationException.class,
                () -> FilmPrinting.print(
                        ART, job, Workshop.assumed(), new FilmPrinting.Order(printer, paper, 1, false), done -> {
                            if (done > 0.6) {
                                throw new CancellationException("stopped");
                            }
                        }));
    }
}
