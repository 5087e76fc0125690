package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import greyground.app.check.FilmChecks;
import greyground.film.job.Job;
import greyground.film.job.JobFile;
import greyground.output.Attachment;
import greyground.output.FilmPdfReader;
import greyground.raster.Progress;
import greyground.workshop.Workshop;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Line art, mended on request. */
class MendIT {
    private static final Path JUG = Path.of("testimages/hatched-jug.png");

    @TempDir
    Path folder;

    private JsonNode film(String name, Object... further) throws Exception {
        Object[] words = new Object[further.length + 9];
        System.arraycopy(
                new Object[] {
                    "positive",
                    JUG,
                    "--plate",
                    "140x100mm",
                    "--date",
                    "2026-03-31",
                    "--json",
                    "--out",
                    folder.resolve(name)
                },
                0,
                words,
                0,
                9);
        System.arraycopy(further, 0, words, 9, further.length);
        return new ObjectMapper().readTree(Attempt.done(words).out());
    }

    private FilmChecks checks(String name) throws Exception {
        try (FilmPdfReader reader = FilmPdfReader.open(folder.resolve(name))) {
            byte[] text = reader.attachment(Attachment.JOB).orElseThrow();
            Job job = JobFile.read(new String(text, StandardCharsets.UTF_8));
            return FilmChecks.of(job, Workshop.assumed(), reader, Progress.NONE);
        }
    }

    @Test
    void mendedLineArtHasSolidStrokesAndNoOpenBite() throws Exception {
        JsonNode plain = film("plain.pdf");
        assertFalse(plain.has("mended"));
        assertFalse(plain.at("/job/mended").asBoolean());
        JsonNode mended = film("mended.pdf", "--mend");
        assertTrue(mended.at("/job/mended").asBoolean());
        double solid = mended.at("/mended/solidSquareMillimetres").asDouble();
        assertTrue(solid > 100, "made solid: " + solid + " mm2");
        FilmChecks before = checks("plain.pdf");
        FilmChecks after = checks("mended.pdf");
        assertEquals(0, before.films().get(0).findings().openBiteCount());
        assertEquals(0, after.films().get(0).findings().openBiteCount());
        double more = after.films().get(0).findings().blackSquareMillimetres()
                - before.films().get(0).findings().blackSquareMillimetres();
        assertEquals(solid, more, 1e-3, "the report says what the film holds");
        assertTrue(after.films().get(0).findings().shutOpeningCount()
                < before.films().get(0).findings().shutOpeningCount());
    }

    @Test
    void aReusedJobIsMendedAgain() throws Exception {
        film("once.pdf", "--mend", "--resolution", "720");
        JsonNode again = new ObjectMapper()
                .readTree(Attempt.done(
                                "positive",
                                JUG,
                                "--job",
                                folder.resolve("once.pdf"),
                                "--json",
                                "--out",
                                folder.resolve("again.pdf"))
                        .out());
        assertTrue(again.has("mended"));
        try (FilmPdfReader one = FilmPdfReader.open(folder.resolve("once.pdf"));
                FilmPdfReader two = FilmPdfReader.open(folder.resolve("again.pdf"))) {
            assertEquals(
                    one.attachment(Attachment.JOB).map(text -> new String(text, StandardCharsets.UTF_8)),
                    two.attachment(Attachment.JOB).map(text -> new String(text, StandardCharsets.UTF_8)));
        }
    }

    @Test
    void aContinuousToneFilmIsNotMended() {
        Attempt attempt = Attempt.of(
                "positive",
                JUG,
                "--plate",
                "60x40mm",
                "--process",
                "photogravure",
                "--mend",
                "--out",
                folder.resolve("film.pdf"));
        assertEquals(2, attempt.status());
        assertTrue(attempt.err().contains("--mend"), attempt.err());
    }
}
