package greyground.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.film.sheet.Sheet;
import greyground.output.FilmDocument.Film;
import greyground.quantity.FilmPixels;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CancellationException;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class FilmPdfTest {
    /** A reader of PDF/A need not count past 2^31 - 1; the limit is injected, since a film of that size takes minutes. */
    @Test
    void aPictureLongerThanAPdfHoldsIsRefused() throws Exception {
        assertEquals(2_147_483_647L, PdfObjects.LARGEST_STREAM);
        PdfObjects objects = new PdfObjects(new ByteArrayOutputStream());
        objects.addPassing("", out -> out.write(new byte[1000]), 1000);
        String said = String.valueOf(assertThrows(
                        Refusal.class, () -> objects.addPassing("", out -> out.write(new byte[1001]), 1000))
                .getMessage());
        assertTrue(said.contains("takes 1001 bytes") && said.contains("at most 1000 "), said);
        assertTrue(said.contains("write a TIFF instead"), said);
    }

    @TempDir
    Path folder;

    static Stream<FilmDocument> kindsOfFilm() {
        return Stream.of(
                SampleFilm.document(SampleFilm.film(720, 80, 70, 1)),
                SampleFilm.document(SampleFilm.film(360, 80, 70, 8)),
                SampleFilm.document(SampleFilm.film(360, 80, 70, 16)),
                SampleFilm.document(SampleFilm.film(360, 80, 70, 16), SampleFilm.film(1440, 80, 70, 1)));
    }

    /** Outside authority: the veraPDF validation model, profile PDF/A-3b. */
    @ParameterizedTest
    @MethodSource("kindsOfFilm")
    void anIndependentValidatorAcceptsEveryKindOfFilm(FilmDocument document) throws Exception {
        Archivable.check(Written.pdf(document, 2));
    }

    @Test
    void theSameDocumentGivesTheSameBytesForAnyNumberOfThreadsAndAnyLocale() throws Exception {
        byte[] first = Written.pdf(SampleFilm.document(SampleFilm.film(720, 80, 70, 1)), 1);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
            assertArrayEquals(first, Written.pdf(SampleFilm.document(SampleFilm.film(720, 80, 70, 1)), 3));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void anotherMachineWritesTheSameBytes() throws Exception {
        byte[] here = Written.pdf(SampleFilm.document(SampleFilm.film(360, 80, 70, 1)), 2);
        String java = System.getProperty("java.home") + File.separator + "bin" + File.separator + "java";
        ExternalTool.run(
                folder,
                java,
                "-Duser.timezone=Pacific/Chatham",
                "-cp",
                System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
                FilmPdfByHand.class.getName(),
                folder.toString(),
                "1",
                "360",
                "80",
                "70");
        assertArrayEquals(here, Files.readAllBytes(folder.resolve("film.pdf")));
    }

    @Test
    void anotherTitleGivesAnotherIdentifier() throws Exception {
        FilmDocument one = SampleFilm.document(SampleFilm.film(360, 80, 70, 1));
        FilmDocument other = SampleFilm.titled("Another", one);
        assertFalse(identifier(Written.pdf(one, 2)).equals(identifier(Written.pdf(other, 2))));
    }

    private static String identifier(byte[] pdf) throws Exception {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            return document.getDocument().getDocumentID().toString();
        }
    }

    @Test
    void legendsAndPlanAreRealText() throws Exception {
        FilmDocument document = SampleFilm.document(SampleFilm.film(720, 120, 100, 1));
        try (PDDocument pdf = Loader.loadPDF(Written.pdf(document, 2))) {
            PDFTextStripper text = new PDFTextStripper();
            text.setEndPage(1);
            assertTrue(text.getText(pdf).contains("Grain 180 µm · 1440 dpi · Übergang 0.05–0.95"));
            text.setEndPage(pdf.getNumberOfPages());
            String all = text.getText(pdf);
            for (String words : List.of("42 °Bé (SG", "2026-02-11", "never zinc", "art L*", "1 of 2")) {
                assertTrue(all.contains(words), words);
            }
        }
        Path file = Written.pdf(folder, document);
        String read = ExternalTool.run(folder, "pdftotext", "-f", "1", "-l", "1", file.toString(), "-");
        assertTrue(read.contains("INK SIDE: reads right when the ink faces you"), read);
        assertTrue(read.contains("expose 150 s, no separate screen"), read);
    }

    @Test
    void aTitleThatTheTypeFaceCannotSpellIsStillWrittenAndKeptInTheMetadata() throws Exception {
        FilmDocument one = SampleFilm.document(SampleFilm.film(360, 80, 70, 1));
        String title = "港の壁 \uD83C\uDF0A\tstate\u0001 2";
        byte[] pdf = Written.pdf(SampleFilm.titled(title, one), 2);
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertEquals(title, document.getDocumentInformation().getTitle());
            assertTrue(new PDFTextStripper().getText(document).contains("??? ? state"));
        }
    }

    @Test
    void independentReadersSeeTheSizesTheBoxesAndTheAttachments() throws Exception {
        Path file = Written.pdf(folder, SampleFilm.document(SampleFilm.film(1440, 80, 70, 1)));
        String name = file.toString();
        assertTrue(ExternalTool.run(folder, "qpdf", "--check", name).contains("No syntax or stream encoding errors"));
        String boxes = ExternalTool.run(folder, "pdfinfo", "-box", name);
        // 4535 x 3969 pixels of 1/20 pt; the plate lies 1134 pixels in, the image 170 pixels further out.
        assertBox(boxes, "MediaBox", "0.00 0.00 226.75 198.45");
        assertBox(boxes, "TrimBox", "56.70 56.70 170.05 141.75");
        assertBox(boxes, "BleedBox", "48.20 48.20 178.55 150.25");
        String picture = ExternalTool.run(folder, "pdfimages", "-list", name);
        assertTrue(
                Pattern.compile("image\\s+4535\\s+3969\\s+gray\\s+1\\s+1\\s+image\\s+no\\s+\\d+\\s+0\\s+1440\\s+1440")
                        .matcher(picture)
                        .find(),
                picture);
        String fonts = ExternalTool.run(folder, "pdffonts", name);
        assertTrue(
                Pattern.compile("[A-Z]{6}\\+LiberationSans\\s+CID TrueType\\s+Identity-H\\s+yes yes yes")
                        .matcher(fonts)
                        .find(),
                fonts);
        String files = ExternalTool.run(folder, "pdfdetach", "-list", name);
        for (String attached : List.of("job.json", "workshop.json", "curve.json", "plan.json", "plan.txt")) {
            assertTrue(files.contains(attached), files);
        }
        ExternalTool.run(folder, "pdfdetach", "-savefile", "job.json", "-o", "saved.json", name);
        assertEquals("{\"plate\": \"80x60mm\"}", Files.readString(folder.resolve("saved.json")));
        String pages = ExternalTool.run(folder, "mutool", "info", name);
        assertTrue(pages.contains("4535x3969"), pages);
    }

    private static void assertBox(String printed, String box, String expected) {
        String line =
                printed.lines().filter(each -> each.startsWith(box)).findFirst().orElseThrow();
        assertEquals(box + ": " + expected, line.replaceAll("\\s+", " ").strip());
    }

    @Test
    void printersAreAskedNotToScale() throws Exception {
        try (PDDocument pdf = Loader.loadPDF(Written.pdf(SampleFilm.document(SampleFilm.film(360, 80, 70, 1)), 2))) {
            var preferences = pdf.getDocumentCatalog().getCOSObject().getCOSDictionary(COSName.VIEWER_PREFERENCES);
            assertEquals(COSName.NONE, preferences.getCOSName(COSName.getPDFName("PrintScaling")));
        }
    }

    /** Portable bitmap: 1 is black (netpbm's format description). Poppler takes the picture out of the file. */
    @Test
    void blackOnTheFilmIsBlackInThePdfForPoppler() throws Exception {
        Film film = SampleFilm.film(720, 80, 70, 1);
        Path file = Written.pdf(folder, SampleFilm.document(film));
        ExternalTool.run(folder, "pdfimages", file.toString(), "out");
        assertArrayEquals(Written.rows(film), raster(folder.resolve("out-000.pbm"), 2));
    }

    /** Rendered by two independent readers at the film's own resolution, pixel for pixel: 0 is black. */
    @Test
    void blackOnTheFilmIsBlackOnThePageForTwoRenderers() throws Exception {
        Film film = withoutLegends(SampleFilm.film(360, 80, 70, 1));
        Path file = Written.pdf(folder, SampleFilm.document(film));
        SampleFilm.Pattern pattern = (SampleFilm.Pattern) film.rows();
        byte[] expected = new byte[pattern.width() * pattern.height()];
        for (int i = 0; i < expected.length; i++) {
            expected[i] = (byte) (pattern.sample(i % pattern.width(), i / pattern.width()) == 1 ? 0 : 255);
        }
        String name = file.toString();
        ExternalTool.run(
                folder, "pdftoppm", "-r", "360", "-f", "1", "-l", "1", "-singlefile", "-gray", name, "poppler");
        assertArrayEquals(expected, raster(folder.resolve("poppler.pgm"), 3));
        ExternalTool.run(folder, "mutool", "draw", "-r", "360", "-c", "gray", "-A", "0", "-o", "mu.pgm", name, "1");
        assertArrayEquals(expected, raster(folder.resolve("mu.pgm"), 3));
    }

    private static Film withoutLegends(Film film) {
        Sheet sheet = film.sheet();
        return new Film(
                new Sheet(
                        sheet.pixels(),
                        sheet.widthPixels(),
                        sheet.heightPixels(),
                        sheet.plate(),
                        sheet.image(),
                        List.of()),
                film.rows());
    }

    /** What follows the header of a netpbm file, which is {@code headerLines} lines long. */
    private static byte[] raster(Path file, int headerLines) throws Exception {
        byte[] bytes = Files.readAllBytes(file);
        int at = 0;
        for (int line = 0; line < headerLines; at++) {
            if (bytes[at] == '\n') {
                line++;
            }
        }
        byte[] raster = new byte[bytes.length - at];
        System.arraycopy(bytes, at, raster, 0, raster.length);
        return raster;
    }

    @Test
    void aSheetLongerThanPdfAllowsIsRefusedBeforeAnythingIsWritten() {
        int side = 72 * 201;
        Sheet sheet = new Sheet(
                FilmPixels.of(new Resolution(72)),
                side,
                10,
                new PixelRect(1, 1, 5, 5),
                new PixelRect(1, 1, 5, 5),
                List.of());
        FilmDocument document = SampleFilm.document(new Film(sheet, new SampleFilm.Pattern(side, 10, 1)));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Refusal refusal = assertThrows(Refusal.class, () -> FilmPdf.write(document, out, 1, Progress.NONE));
        assertTrue(refusal.getMessage().contains("5105.4 mm"), refusal.getMessage());
        assertEquals(0, out.size());
    }

    @Test
    void stoppingTravelsUp() {
        FilmDocument document = SampleFilm.document(SampleFilm.film(720, 80, 70, 1));
        Progress stop = fraction -> {
            throw new CancellationException("enough");
        };
        assertThrows(
                CancellationException.class, () -> FilmPdf.write(document, OutputStream.nullOutputStream(), 2, stop));
    }

    @Test
    void theFileEndsAsAPdfDoes() throws Exception {
        byte[] pdf = Written.pdf(SampleFilm.document(SampleFilm.film(360, 80, 70, 1)), 2);
        String end = new String(pdf, pdf.length - 6, 6, StandardCharsets.US_ASCII);
        assertEquals("%%EOF\n", end);
    }
}
