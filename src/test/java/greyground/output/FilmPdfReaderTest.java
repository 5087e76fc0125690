package greyground.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.output.FilmDocument.Film;
import greyground.quantity.Refusal;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FilmPdfReaderTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 8, 16})
    void theFilmComesBackAsItWent(int bits) throws Exception {
        Film film = SampleFilm.film(360, 80, 70, bits);
        Path file = Written.pdf(folder, SampleFilm.document(film));
        try (FilmPdfReader reader = FilmPdfReader.open(file)) {
            List<FilmPdfReader.ReadFilm> films = reader.films();
            assertEquals(1, films.size());
            assertEquals(film.sheet().widthPixels(), films.get(0).widthPixels());
            assertEquals(film.sheet().heightPixels(), films.get(0).heightPixels());
            assertEquals(film.sheet().resolution(), films.get(0).resolution());
            assertEquals(film.sheet().plate(), films.get(0).plate());
            assertEquals(film.sheet().image(), films.get(0).image());
            for (int rowsPerBand : new int[] {1, 7, 64, 5000}) {
                ByteArrayOutputStream rows = new ByteArrayOutputStream();
                int bytesPerRow = films.get(0).bytesPerRow();
                reader.readRows(0, rowsPerBand, (first, count, band) -> rows.write(band, 0, count * bytesPerRow));
                assertArrayEquals(Written.rows(film), rows.toByteArray());
            }
        }
    }

    @Test
    void bothFilmsOfAScreenedPlateComeBack() throws Exception {
        Film first = SampleFilm.film(180, 80, 70, 16);
        Film second = SampleFilm.film(1440, 80, 70, 1);
        try (FilmPdfReader reader = FilmPdfReader.open(Written.pdf(folder, SampleFilm.document(first, second)))) {
            assertEquals(
                    List.of(16, 1),
                    reader.films().stream()
                            .map(FilmPdfReader.ReadFilm::bitsPerSample)
                            .toList());
            assertEquals(1440, reader.films().get(1).resolution().dotsPerInch());
        }
    }

    @Test
    void attachmentsComeBackByExactNameOnly() throws Exception {
        try (FilmPdfReader reader =
                FilmPdfReader.open(Written.pdf(folder, SampleFilm.document(SampleFilm.film(180, 80, 70, 1))))) {
            assertEquals(
                    "{\"plate\": \"80x60mm\"}",
                    new String(reader.attachment(Attachment.JOB).orElseThrow(), StandardCharsets.UTF_8));
            assertTrue(reader.attachment(Attachment.PLAN_TEXT).isPresent());
            assertFalse(reader.attachment("JOB.json").isPresent());
            assertFalse(reader.attachment("../job.json").isPresent());
        }
    }

    /** A film saved again by an independent program still opens. */
    @Test
    void aFilmSavedAgainByAnotherProgramStillOpens() throws Exception {
        Film film = SampleFilm.film(180, 80, 70, 1);
        Path file = Written.pdf(folder, SampleFilm.document(film));
        ExternalTool.run(folder, "qpdf", "--object-streams=generate", "--linearize", file.toString(), "again.pdf");
        try (FilmPdfReader reader = FilmPdfReader.open(folder.resolve("again.pdf"))) {
            assertEquals(film.sheet().plate(), reader.films().get(0).plate());
            assertTrue(reader.attachment(Attachment.WORKSHOP).isPresent());
        }
    }

    @Test
    void whatIsNoPdfIsRefusedInOneLine() throws Exception {
        Path file = Files.writeString(folder.resolve("letter.pdf"), "Dear printer,\nplease find enclosed");
        Refusal refusal = assertThrows(Refusal.class, () -> FilmPdfReader.open(file));
        assertTrue(refusal.getMessage().startsWith("letter.pdf can't be read as a film PDF"), refusal.getMessage());
        assertThrows(Refusal.class, () -> FilmPdfReader.open(folder.resolve("none.pdf")));
    }

    /** An attachment that would swell to a gigabyte is dropped at the limit, whatever it says of itself. */
    @Test
    void aSwellingAttachmentIsRefused() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfObjects objects = new PdfObjects(out);
        int stream = objects.addDeflated("/Type/EmbeddedFile", new byte[Attachment.LARGEST_BYTES + 1]);
        int pages = objects.add("<</Type/Pages/Count 0/Kids[]>>");
        int catalog = objects.add("<</Type/Catalog/Pages " + PdfObjects.reference(pages)
                + "/AF[<</Type/Filespec/UF(job.json)/EF<</F " + PdfObjects.reference(stream) + ">>>>]>>");
        objects.finish(catalog, objects.add("<<>>"));
        Path file = Files.write(folder.resolve("swelling.pdf"), out.toByteArray());
        try (FilmPdfReader reader = FilmPdfReader.open(file)) {
            Refusal refusal = assertThrows(Refusal.class, () -> reader.attachment("job.json"));
            assertTrue(refusal.getMessage().contains("more than 67108864 bytes"), refusal.getMessage());
            assertThrows(Refusal.class, reader::films);
        }
    }

    @Test
    void pagesThatContainThemselvesAreRefused() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfObjects objects = new PdfObjects(out);
        int pages = objects.number();
        objects.write(pages, "<</Type/Pages/Count 1/Kids[" + PdfObjects.reference(pages) + "]>>");
        int catalog = objects.add("<</Type/Catalog/Pages " + PdfObjects.reference(pages) + ">>");
        objects.finish(catalog, objects.add("<<>>"));
        Path file = Files.write(folder.resolve("loop.pdf"), out.toByteArray());
        assertThrows(Refusal.class, () -> readAll(file));
    }

    /** 400 seeded mutations: bytes turned, pieces cut out, the end cut off. Each is read, or refused in one line, soon. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void aDamagedFileIsReadOrRefusedInOneLine(long seed) throws Exception {
        byte[] whole = Written.pdf(SampleFilm.document(SampleFilm.film(72, 80, 70, 1)), 1);
        Random random = new Random(seed);
        int refused = 0;
        for (int i = 0; i < 100; i++) {
            Path file = Files.write(folder.resolve("damaged.pdf"), damaged(whole, random));
            String what = "seed " + seed + ", mutation " + i;
            refused += assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
                try {
                    readAll(file);
                    return 0;
                } catch (Refusal refusal) {
                    assertFalse(refusal.getMessage().contains("\n"), what);
                    assertTrue(refusal.getMessage().startsWith("damaged.pdf can't be read"), what);
                    return 1;
                }
            });
        }
        assertTrue(refused > 20, "refused: " + refused);
    }

    private static void readAll(Path file) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(file)) {
            reader.films();
            reader.readRows(0, 64, (first, count, band) -> {});
            reader.attachment(Attachment.JOB);
        }
    }

    private static byte[] damaged(byte[] whole, Random random) {
        byte[] bytes = whole.clone();
        switch (random.nextInt(3)) {
            case 0 -> {
                for (int i = 0; i < 60; i++) {
                    bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
                }
                return bytes;
            }
            case 1 -> {
                int from = random.nextInt(bytes.length);
                int gap = Math.min(bytes.length - from, 1 + random.nextInt(2000));
                byte[] cut = new byte[bytes.length - gap];
                System.arraycopy(bytes, 0, cut, 0, from);
                System.arraycopy(bytes, from + gap, cut, from, bytes.length - from - gap);
                return cut;
            }
            default -> {
                return Arrays.copyOf(bytes, random.nextInt(bytes.length));
            }
        }
    }
}
