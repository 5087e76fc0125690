package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import greyground.Main;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The newest long-term Java beside the one under test makes the same film, and says nothing of its own. */
public class NewerJavaIT {
    /** Long-term Javas are 17, 21, 25 and so on, one in four. */
    private static final int FIRST = 17;

    private static final int EVERY = 4;

    @TempDir
    Path folder;

    @Test
    void theFilmIsTheSameByteForByteAndNoWarningIsSeen() throws Exception {
        Path here = Path.of(System.getProperty("java.home"));
        Optional<Path> newest = newestBeside(here);
        assumeTrue(newest.isPresent(), "no second long-term Java lies beside " + here);
        List<byte[]> first = films(here);
        List<byte[]> second = films(newest.get());
        for (int i = 0; i < first.size(); i++) {
            assertArrayEquals(first.get(i), second.get(i));
        }
    }

    /** The film as PDF and as TIFF, and what was said, made in a cache of its own. */
    private List<byte[]> films(Path home) throws Exception {
        Path own = Files.createTempDirectory(folder, "java");
        Path pdf = folder.resolve("film.pdf");
        Path tiff = folder.resolve("film.tif");
        List<Object> words =
                List.of("positive", "testimages/still-life.png", "--plate", "40x50mm", "--resolution", "720");
        List<String> command = new ArrayList<>(List.of(
                home.resolve("bin/java").toString(),
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        words.forEach(word -> command.add(word.toString()));
        command.addAll(List.of("--date", "2026-03-31", "--out", pdf.toString(), "--tiff", tiff.toString()));
        OwnProcess process = OwnProcess.start(own, command);
        assertEquals(0, process.ended(300), process.said());
        assertFalse(process.said().contains("WARNING"), process.said());
        List<byte[]> made = List.of(
                Files.readAllBytes(pdf),
                Files.readAllBytes(tiff),
                process.said().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        Files.delete(pdf);
        Files.delete(tiff);
        return made;
    }

    /** The newest long-term Java beside {@code here}, if there is one. */
    public static Optional<Path> newestBeside(Path here) throws IOException {
        try (Stream<Path> all = Files.list(here.getParent())) {
            return all.filter(home -> longTerm(home) > longTerm(here))
                    .max(Comparator.comparingInt(NewerJavaIT::longTerm));
        }
    }

    /** The version of a long-term Java, or 0 for anything else. */
    private static int longTerm(Path home) {
        try {
            Matcher version =
                    Pattern.compile("JAVA_VERSION=\"(\\d+)").matcher(Files.readString(home.resolve("release")));
            int number = version.find() && Files.isExecutable(home.resolve("bin/java"))
                    ? Integer.parseInt(version.group(1))
                    : 0;
            return number >= FIRST && (number - FIRST) % EVERY == 0 ? number : 0;
        } catch (IOException none) {
            return 0;
        }
    }
}
