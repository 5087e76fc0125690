package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.output.ExternalTool;
import greyground.output.FilmPdfReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The program as a process of its own: stopped half way, and with little memory for a large film. */
class KilledIT {
    private static final Path SCENE = Path.of("testimages/still-life.png");

    @TempDir
    Path folder;

    private Process start(List<String> machine, Object... words) throws Exception {
        return started(command(machine, words));
    }

    private static List<String> command(List<String> machine, Object... words) {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(machine);
        command.addAll(
                List.of("-Djava.awt.headless=true", "-cp", System.getProperty("java.class.path"), "greyground.Main"));
        for (Object word : words) {
            command.add(word.toString());
        }
        return command;
    }

    private Process started(List<String> command) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile());
        // Grains kept by earlier runs would make this one quicker and smaller.
        builder.environment().put("XDG_CACHE_HOME", folder.resolve("cache").toString());
        return builder.start();
    }

    /** Waits until the program has begun its file, then a little longer. Returns whether it was still running. */
    private boolean stopWhileWriting(Process process, int milliseconds, boolean atOnce) throws Exception {
        while (process.isAlive() && unfinished(process).isEmpty()) {
            Thread.sleep(1);
        }
        Thread.sleep(milliseconds);
        boolean running = process.isAlive();
        if (atOnce) {
            process.destroyForcibly();
        } else {
            process.destroy();
        }
        assertTrue(process.waitFor(30, TimeUnit.SECONDS), "it ends when told to");
        return running;
    }

    private List<String> unfinished(Process process) throws Exception {
        return Attempt.unfinished(folder).stream()
                .filter(name -> name.contains("-" + process.pid() + "."))
                .toList();
    }

    private Object[] film(Path film) {
        return new Object[] {
            "positive", SCENE, "--plate", "200x250mm", "--resolution", "1440", "--date", "2026-03-31", "--out", film
        };
    }

    /** SIGTERM and SIGKILL at seeded moments of the writing: the earlier film stays, whole. */
    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "a process there is always killed at once")
    void aStoppedProgramLeavesTheEarlierFilm() throws Exception {
        Path film = folder.resolve("film.pdf");
        Attempt.done("positive", SCENE, "--plate", "40x40mm", "--resolution", "720", "--out", film);
        byte[] earlier = Files.readAllBytes(film);
        Random moments = new Random(7);
        int stopped = 0;
        int abandoned = 0;
        for (int round = 0; round < 4; round++) {
            boolean atOnce = round % 2 == 1;
            Process process = start(List.of(), film(film));
            if (stopWhileWriting(process, moments.nextInt(120), atOnce)) {
                stopped++;
                assertArrayEquals(earlier, Files.readAllBytes(film), "round " + round);
            } else {
                Files.write(film, earlier);
            }
            if (atOnce) {
                abandoned += unfinished(process).size();
            } else {
                assertEquals(List.of(), unfinished(process), "round " + round);
            }
        }
        assertTrue(abandoned > 0, "a program killed at once leaves something to clear");
        assertTrue(stopped > 1, "stopped while writing: " + stopped);
        Attempt.done("positive", SCENE, "--plate", "40x40mm", "--resolution", "720", "--out", film);
        assertEquals(List.of(), Attempt.unfinished(folder), "the next film clears what a killed program left");
    }

    /** A film of 80 000 x 60 000 bits, more than 2^32, within 512 MiB of heap, read whole by an independent program. */
    @Test
    void aVeryLargeFilmNeedsLittleMemory() throws Exception {
        Path film = folder.resolve("film.pdf");
        Process process = start(
                List.of("-Xmx512m"),
                "positive",
                SCENE,
                "--plate",
                "740x520mm",
                "--sheet",
                "800x600mm",
                "--resolution",
                "2540",
                "--date",
                "2026-03-31",
                "--out",
                film);
        assertTrue(process.waitFor(120, TimeUnit.SECONDS), "it ends");
        assertEquals(0, process.exitValue(), () -> said());
        try (FilmPdfReader reader = FilmPdfReader.open(film)) {
            FilmPdfReader.ReadFilm read = reader.films().get(0);
            assertEquals(80_000, read.widthPixels());
            assertEquals(60_000, read.heightPixels());
        }
        String info = ExternalTool.run(folder, "pdfinfo", "film.pdf");
        assertFalse(info.contains("rror"), info);
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    /** The shell forbids files of more than 100 KiB, as a full disk would. */
    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "ulimit is a word of Unix shells")
    void aDiskWithoutRoomLeavesTheEarlierFilm() throws Exception {
        Path film = Files.writeString(folder.resolve("film.pdf"), "an earlier film");
        Process process = limited("ulimit -f 100", "-XX:-UsePerfData");
        assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it ends");
        assertEquals(1, process.exitValue(), () -> said());
        assertTrue(said().startsWith("greyground: cannot write the film"), said());
        assertEquals(1, said().strip().lines().count(), said());
        assertEquals("an earlier film", Files.readString(film));
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "started through a Unix shell")
    void tooLittleMemoryIsSaidInOneLine() throws Exception {
        // Making this grain alone takes more than 64 MiB.
        Object[] fine = {
            "positive",
            SCENE,
            "--plate",
            "60x60mm",
            "--resolution",
            "5760",
            "--date",
            "2026-03-31",
            "--out",
            folder.resolve("film.pdf")
        };
        Process process = started(command(List.of("-Xmx40m"), fine));
        assertTrue(process.waitFor(60, TimeUnit.SECONDS), "it ends");
        assertEquals(1, process.exitValue(), () -> said());
        assertTrue(said().startsWith("greyground: "), said());
        assertTrue(said().contains("memory"), said());
        assertEquals(1, said().strip().lines().count(), said());
        assertFalse(Files.exists(folder.resolve("film.pdf")));
        assertEquals(List.of(), Attempt.unfinished(folder));
    }

    static List<Integer> sizes() {
        return Sweep.of(List.of(10, 16, 18, 21, 23));
    }

    /** So little that Java's own threads would die of it and leave the program waiting. */
    @ParameterizedTest
    @MethodSource("sizes")
    void hardlyAnyMemoryIsSaidInOneLineAtOnce(int mebibytes) throws Exception {
        Process process = start(List.of("-Xmx" + mebibytes + "m"), film(folder.resolve("film.pdf")));
        assertTrue(process.waitFor(30, TimeUnit.SECONDS), "it ends");
        assertEquals(1, process.exitValue(), () -> said());
        assertTrue(said().startsWith("greyground: there is not enough memory, "), said());
        assertEquals(1, said().strip().lines().count(), said());
    }

    private Process limited(String limit, String machine) throws Exception {
        List<String> command = new ArrayList<>(List.of("bash", "-c", limit + "; exec \"$@\"", "bash"));
        command.addAll(command(List.of(machine), film(folder.resolve("film.pdf"))));
        return started(command);
    }

    private String said() {
        try {
            return Files.readString(folder.resolve("said.txt"));
        } catch (java.io.IOException silent) {
            return silent.toString();
        }
    }
}
