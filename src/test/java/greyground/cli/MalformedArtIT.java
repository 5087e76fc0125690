package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Main;
import greyground.Sweep;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** More than 500 damaged pictures of every kind through the real command line, with little memory. */
class MalformedArtIT {
    private static final String MEMORY = "-Xmx256m";
    private static final int EACH = 12;
    private static final int EVERY = 90;

    @TempDir
    Path folder;

    /** Status 1 and one line, or a film where the damage left a picture; each within ten seconds, and nothing left behind. */
    @Test
    void everyDamagedPictureIsAFilmOrOneLine() throws Exception {
        List<MalformedArt.Mutant> mutants = MalformedArt.all(EACH);
        assertTrue(mutants.size() >= 500, "pictures: " + mutants.size());
        int all = Sweep.of(mutants).size();
        OwnProcess run = OwnProcess.start(
                folder, List.of(MEMORY, "-Djava.io.tmpdir=" + folder), MalformedArtRun.class, folder, EACH);
        assertEquals(0, run.ended(300), run::said);
        Matcher counts =
                Pattern.compile("films (\\d+) refused (\\d+) slowest \\d+ ms\n").matcher(run.said());
        assertTrue(counts.matches(), run::said);
        int refused = Integer.parseInt(counts.group(2));
        assertEquals(all, Integer.parseInt(counts.group(1)) + refused);
        assertTrue(refused > all / 4, "damage that breaks nothing tests nothing: " + run.said());
    }

    /** Some of them as whole processes. */
    @Test
    void aProcessEndsWithStatusOneAndOneLine() throws Exception {
        List<MalformedArt.Mutant> mutants = MalformedArt.all(EACH);
        List<Integer> places = IntStream.range(0, mutants.size())
                .filter(i -> i % EVERY == 0)
                .boxed()
                .toList();
        for (int i : Sweep.of(places)) {
            MalformedArt.Mutant mutant = mutants.get(i);
            Path art = Files.write(folder.resolve(mutant.name()), mutant.bytes());
            Path film = folder.resolve("film.pdf");
            OwnProcess process =
                    OwnProcess.start(folder, List.of(MEMORY), Main.class, MalformedArtRun.words(art, film));
            assertEquals(1, process.ended(MalformedArtRun.MOST_SECONDS), mutant.name());
            assertTrue(process.said().startsWith("greyground: art "), process::said);
            assertEquals(1, process.said().strip().lines().count(), process::said);
            assertFalse(Files.exists(film), mutant.name());
        }
    }
}
