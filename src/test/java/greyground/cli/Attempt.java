package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * One command line, run within the test's own process.
 *
 * @param status exit status
 * @param out what it printed
 * @param err what it complained of
 */
public record Attempt(int status, String out, String err) {
    public static Attempt of(Object... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int status = CommandLine.run(
                Arrays.stream(words).map(String::valueOf).toArray(String[]::new),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
        return new Attempt(status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    /** Runs a command line that must succeed without a complaint. */
    public static Attempt done(Object... words) {
        Attempt attempt = of(words);
        assertEquals("", attempt.err());
        assertEquals(0, attempt.status());
        return attempt;
    }

    /** Names of all files in a folder that an unfinished write would leave. */
    public static List<String> unfinished(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".part"))
                    .toList();
        }
    }
}
