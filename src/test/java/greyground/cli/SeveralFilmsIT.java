package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import greyground.app.Greyground;
import greyground.app.files.NamedFiles;
import greyground.app.recipe.FilmSeries;
import greyground.app.recipe.JobWords;
import greyground.workshop.Workshop;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Films of several pictures at once. */
class SeveralFilmsIT {
    private static final Path CUP = Path.of("testimages/cup.png");
    private static final Path CAT = Path.of("testimages/cat.png");

    @TempDir
    Path folder;

    private Path films;
    private Path broken;

    @BeforeEach
    void aPictureThatIsCutShort() throws Exception {
        films = folder.resolve("films");
        byte[] whole = Files.readAllBytes(CAT);
        broken = Files.write(folder.resolve("broken.png"), java.util.Arrays.copyOf(whole, whole.length / 2));
    }

    private Object[] words(Object... further) {
        List<Object> words = new ArrayList<>(
                List.of("positive", "--plate", "30x30mm", "--resolution", "600", "--date", "2026-03-31"));
        words.addAll(List.of(further));
        return words.toArray();
    }

    @Test
    void oneThatFailsDoesNotStopTheOthersAndEachIsTheFilmItIsAlone() throws Exception {
        Attempt all = Attempt.of(words(CUP, broken, CAT, "--out-folder", films));
        assertEquals(1, all.status(), all.err());
        assertTrue(all.out().contains("film    " + films.resolve("cup.pdf") + ": art white"), all.out());
        assertTrue(all.out().endsWith("made    2 films; 1 failed\n"), all.out());
        assertEquals(1, all.err().lines().count(), all.err());
        assertTrue(all.err().startsWith("greyground: " + broken + ": "), all.err());
        assertFalse(Files.exists(films.resolve("broken.pdf")));
        assertEquals(List.of(), Attempt.unfinished(films));
        for (Path art : List.of(CUP, CAT)) {
            Path alone = folder.resolve("alone.pdf");
            Attempt.done(words(art, "--out", alone));
            String name = String.valueOf(art.getFileName()).replace(".png", ".pdf");
            assertArrayEquals(Files.readAllBytes(alone), Files.readAllBytes(films.resolve(name)), name);
        }
    }

    @Test
    void aFileInTheFoldersPlaceIsSaidAndKept() throws Exception {
        byte[] before = Files.readAllBytes(broken);
        Attempt refused = Attempt.of(words(CUP, "--out-folder", broken));
        assertEquals(1, refused.status());
        assertEquals(
                "greyground: cannot make the folder " + broken
                        + ": a file of that name is there already; make it yourself, or choose another\n",
                refused.err());
        assertArrayEquals(before, Files.readAllBytes(broken));
    }

    @Test
    void nothingIsReplacedUnasked() throws Exception {
        Files.createDirectory(films);
        Path kept = Files.writeString(films.resolve("cup.pdf"), "kept");
        JsonNode first = new ObjectMapper()
                .readTree(Attempt.of(words(CUP, CAT, "--out-folder", films, "--json"))
                        .out());
        assertEquals(1, first.get("made").asInt());
        assertEquals(1, first.get("failed").asInt());
        assertTrue(first.get("films").get(0).get("fault").asText().contains("add --replace"), first.toString());
        assertEquals(CAT.toString(), first.get("films").get(1).get("art").asText());
        assertEquals(
                30,
                first.get("films")
                        .get(1)
                        .get("job")
                        .get("plate")
                        .get("widthMillimetres")
                        .asInt());
        assertEquals("kept", Files.readString(kept));
        Attempt.done(words(CUP, "--out-folder", films, "--replace"));
        assertTrue(Files.size(kept) > 1000);
    }

    @Test
    void twoPicturesOfOneNameAreRefusedBeforeAnythingIsMade() throws Exception {
        Path same =
                Files.copy(CAT, Files.createDirectory(folder.resolve("other")).resolve("Cup.tif"));
        Attempt attempt = Attempt.of(words(CUP, same, "--out-folder", films));
        assertEquals(2, attempt.status());
        assertTrue(attempt.err().contains("would both become"), attempt.err());
        assertFalse(Files.exists(films));
    }

    @Test
    void whatOneFileCanNotHoldIsRefused() {
        Path one = folder.resolve("one.pdf");
        for (Object[] wrong : List.of(
                words(CUP, CAT, "--out", one),
                words(CUP, CAT),
                words(CUP),
                words(CUP, "--out", one, "--replace"),
                words(CUP, CAT, "--out-folder", films, "--out", one),
                words(CUP, CAT, "--out-folder", films, "--tiff", folder.resolve("t.tif")),
                words(CUP, CAT, "--out-folder", films, "--job", folder.resolve("new.json")),
                words(CUP, CAT, "--out-folder", folder.resolve("no/such/place")))) {
            Attempt attempt = Attempt.of(wrong);
            assertTrue(attempt.status() != 0, attempt.out());
            assertEquals(1, attempt.err().lines().count(), attempt.err());
            assertTrue(attempt.err().matches("(?s)greyground: .*: .*\n"), attempt.err());
        }
        assertFalse(Files.exists(films));
    }

    /** Stopped within the second film: the first stays, and of the second nothing is there. */
    @Test
    void stoppedItKeepsWhatIsMade() throws Exception {
        FilmSeries series = Greyground.series(List.of(CUP, CAT), films, false, new NamedFiles());
        JobWords job = new JobWords(Map.of("plate", "30x30mm", "resolution", "600"));
        List<FilmSeries.Made> made = series.make(
                art -> job.job(Optional.empty(), art.source(1), Workshop.assumed(), "2026-03-31"),
                Workshop.assumed(),
                each -> {},
                done -> {
                    if (done > 0.7) {
                        throw new CancellationException();
                    }
                });
        assertEquals(1, made.size());
        assertTrue(Files.exists(films.resolve("cup.pdf")));
        assertFalse(Files.exists(films.resolve("cat.pdf")));
        assertEquals(List.of(), Attempt.unfinished(films));
    }
}
