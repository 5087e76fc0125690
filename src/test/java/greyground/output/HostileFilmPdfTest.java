package greyground.output;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import java.util.zip.DeflaterOutputStream;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.encryption.AccessPermission;
import org.apache.pdfbox.pdmodel.encryption.StandardProtectionPolicy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A film PDF from outside that wants more than to be read: nothing in it is carried out, fetched or written. */
class HostileFilmPdfTest {
    private static final Duration LONGEST = Duration.ofSeconds(10);
    private static final int SWOLLEN_MEGABYTES = 100;
    private static final byte[] JOB = "{\"plate\": \"80x60mm\"}".getBytes(StandardCharsets.UTF_8);

    @TempDir
    Path folder;

    private Path written(byte[] pdf) throws IOException {
        return Files.write(folder.resolve("film.pdf"), pdf);
    }

    private static byte[] rows(Path file) {
        return assertTimeoutPreemptively(LONGEST, () -> {
            try (FilmPdfReader reader = FilmPdfReader.open(file)) {
                ByteArrayOutputStream rows = new ByteArrayOutputStream();
                int bytes = reader.films().get(0).bytesPerRow();
                reader.readRows(0, 5, (first, count, band) -> rows.write(band, 0, count * bytes));
                return rows.toByteArray();
            }
        });
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.map(folder::relativize).map(Path::toString).sorted().toList();
        }
    }

    /** Names that lead elsewhere on some system or other; the right name is found among them, and no name is ever used as a path. */
    @Test
    void attachmentsWhoseNamesAreTricksAreNoFilesOfOurs() throws Exception {
        Map<String, byte[]> carried = new LinkedHashMap<>();
        for (String name : List.of(
                "../job.json",
                "../../etc/cron.d/job.json",
                "/tmp/job.json",
                "C:\\\\job.json",
                "job.json\\000.exe",
                "JOB.JSON",
                "./job.json",
                "job.json ")) {
            carried.put(name, "{}".getBytes(StandardCharsets.UTF_8));
        }
        try (FilmPdfReader reader = FilmPdfReader.open(written(SmallFilm.pdf(carried, false, "")))) {
            assertTrue(reader.attachment(Attachment.JOB).isEmpty());
        }
        carried.put("job.json", JOB);
        try (FilmPdfReader reader = FilmPdfReader.open(written(SmallFilm.pdf(carried, false, "")))) {
            assertArrayEquals(JOB, reader.attachment(Attachment.JOB).orElseThrow());
        }
        assertEquals(List.of("", "film.pdf"), names());
    }

    /** ISO 32000-1: 12.6.4 (actions), 7.11.4 and 7.3.8.2 (files outside), 14.3.2 (metadata, here with entities that multiply). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "/OpenAction<</S/JavaScript/JS(app.launchURL\\('http://192.0.2.1/'\\))>>",
                "/OpenAction<</S/Launch/F(/bin/true)/Win<</F(cmd.exe)>>>>",
                "/OpenAction<</S/URI/URI(http://192.0.2.1/)>>",
                "/OpenAction<</S/GoToR/F<</FS/URL/F(http://192.0.2.1/a.pdf)>>/D[0/Fit]>>",
                "/OpenAction<</S/SubmitForm/F<</FS/URL/F(http://192.0.2.1/)>>>>",
                "/OpenAction<</S/ImportData/F(/etc/hostname)>>",
                "/AA<</WC<</S/JavaScript/JS(while\\(true\\);)>>>>",
                "/Names<</JavaScript<</Names[(a)<</S/JavaScript/JS(while\\(true\\);)>>]>>>>",
                "/AcroForm<</XFA(<!DOCTYPE x SYSTEM 'http://192.0.2.1/x'><x/>)>>",
                "/Metadata(<!DOCTYPE x [<!ENTITY a 'ha'><!ENTITY b '&a;&a;'>]><x>&b;</x>)",
            })
    void actionsAndReferencesAreNeverFollowed(String wish) throws Exception {
        byte[] plain = rows(written(SmallFilm.pdf(Map.of("job.json", JOB), true, "")));
        Path file = written(SmallFilm.pdf(Map.of("job.json", JOB), true, wish));
        assertArrayEquals(plain, rows(file));
        try (FilmPdfReader reader = FilmPdfReader.open(file)) {
            assertArrayEquals(JOB, reader.attachment(Attachment.JOB).orElseThrow());
        }
        assertEquals(List.of("", "film.pdf"), names());
    }

    /** A film whose rows lie in another file (7.3.8.2, the F entry of a stream) has none. */
    @Test
    void rowsThatLieInAnotherFileAreNotFetched() throws Exception {
        String pdf = new String(SmallFilm.pdf(Map.of(), false, ""), StandardCharsets.ISO_8859_1);
        // One entry in the place of another of the same length, so that all places in the file stay right.
        String outside = pdf.replace("/Decode[1 0]", "/F(/etc/pwd)");
        assertTrue(!outside.equals(pdf));
        Path file = written(outside.getBytes(StandardCharsets.ISO_8859_1));
        assertEquals(32 / 8 * 24, rows(file).length, "the rows inside, or nothing");
    }

    private static byte[] swelling(int megabytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(out)) {
            for (int i = 0; i < megabytes; i++) {
                deflate.write(new byte[1 << 20]);
            }
        }
        return out.toByteArray();
    }

    /** Much in little where the file keeps its objects (7.5.7), which a reader looks through once the table of objects (7.5.4) is lost. */
    @Test
    void objectsThatSwellAreRefused() throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfObjects objects = new PdfObjects(out);
        objects.addStream("/Type/ObjStm/N 1/First 10/Filter/FlateDecode", swelling(SWOLLEN_MEGABYTES));
        int catalog = objects.add("<</Type/Catalog/Pages 99 0 R>>");
        objects.finish(catalog, objects.add("<<>>"));
        byte[] whole = out.toByteArray();
        int table = new String(whole, StandardCharsets.ISO_8859_1).lastIndexOf("\nxref");
        Path file = written(Arrays.copyOf(whole, table));
        assertThrows(Refusal.class, () -> rows(file));
    }

    /** Deflated twice, a kilobyte may hold a gigabyte (7.4.1): what we wrote is deflated once. */
    @Test
    void attachmentsDeflatedTwiceAreRefused() throws Exception {
        ByteArrayOutputStream twice = new ByteArrayOutputStream();
        try (DeflaterOutputStream deflate = new DeflaterOutputStream(twice)) {
            deflate.write(swelling(SWOLLEN_MEGABYTES));
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfObjects objects = new PdfObjects(out);
        int stream = objects.addStream("/Type/EmbeddedFile/Filter[/FlateDecode/FlateDecode]", twice.toByteArray());
        int pages = objects.add("<</Type/Pages/Count 0/Kids[]>>");
        int catalog = objects.add("<</Type/Catalog/Pages " + PdfObjects.reference(pages)
                + "/AF[<</Type/Filespec/UF(job.json)/EF<</F " + PdfObjects.reference(stream) + ">>>>]>>");
        objects.finish(catalog, objects.add("<<>>"));
        Path file = written(out.toByteArray());
        assertTimeoutPreemptively(LONGEST, () -> {
            try (FilmPdfReader reader = FilmPdfReader.open(file)) {
                assertThrows(Refusal.class, () -> reader.attachment(Attachment.JOB));
            }
        });
    }

    /** Encrypted for a certificate (ISO 32000-1, 7.6.4) or by a password that opens it (7.6.3): neither can be read, and one line says so. */
    @Test
    void lockedFilmsAreNamedAsLocked() throws Exception {
        StringBuilder forACertificate = new StringBuilder("%PDF-1.6\n");
        StringBuilder places = new StringBuilder("xref\n0 4\n0000000000 65535 f \n");
        int number = 1;
        for (String object : List.of(
                "<</Type /Catalog /Pages 2 0 R>>",
                "<</Type /Pages /Kids [] /Count 0>>",
                "<</Filter /Adobe.PubSec /SubFilter /adbe.pkcs7.s5 /V 4 /Length 128 /StmF /DefaultCryptFilter"
                        + " /StrF /DefaultCryptFilter /CF <</DefaultCryptFilter <</CFM /AESV2 /Recipients [(0)]>>>>>>")) {
            places.append(String.format(Locale.ROOT, "%010d 00000 n \n", forACertificate.length()));
            forACertificate.append(number++ + " 0 obj " + object + " endobj\n");
        }
        int start = forACertificate.length();
        forACertificate
                .append(places)
                .append("trailer <</Size 4 /Root 1 0 R /Encrypt 3 0 R /ID [(a) (a)]>>\nstartxref\n" + start
                        + "\n%%EOF\n");
        ByteArrayOutputStream withPassword = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            document.addPage(new PDPage());
            document.protect(new StandardProtectionPolicy("owner", "user", new AccessPermission()));
            document.save(withPassword);
        }
        for (byte[] locked :
                List.of(forACertificate.toString().getBytes(StandardCharsets.US_ASCII), withPassword.toByteArray())) {
            Path file = written(locked);
            String said =
                    assertThrows(Refusal.class, () -> FilmPdfReader.open(file)).getMessage();
            assertTrue(said.contains("film.pdf can't be read as a film PDF: it is locked"), said);
        }
    }
}
