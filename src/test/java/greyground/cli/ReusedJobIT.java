package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A job made for one picture and reused for another says what it brings along. */
class ReusedJobIT {
    private static final Path STILL = Path.of("testimages/still-life.png");
    private static final Path CUP = Path.of("testimages/cup.png");

    @TempDir
    Path folder;

    private String made(Path art, String film, Object... more) {
        Object[] words = new Object[more.length + 4];
        words[0] = "positive";
        words[1] = art;
        words[2] = "--out";
        words[3] = folder.resolve(film);
        System.arraycopy(more, 0, words, 4, more.length);
        return Attempt.done(words).out();
    }

    @Test
    void anotherPictureIsToldAndItsOwnPictureIsNot() {
        made(STILL, "still.pdf", "--plate", "40x30mm", "--resolution", "720", "--grain", "300um", "--title", "Pears");
        Path job = folder.resolve("still.pdf");
        assertFalse(made(STILL, "again.pdf", "--job", job).contains("reused"));
        String cup = made(CUP, "cup.pdf", "--job", job);
        assertTrue(cup.contains("a job of another picture, still-life.png: its title \"Pears\", white of "), cup);
        assertTrue(cup.contains("give --title --white automatic --black automatic"), cup);
        String own =
                made(CUP, "own.pdf", "--job", job, "--title", "Cup", "--white", "automatic", "--black", "automatic");
        assertTrue(own.contains("a job of another picture, still-life.png"), own);
        assertFalse(own.contains("taken over"), own);
    }
}
