package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CommandLineTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();
    private final List<Optional<Path>> opened = new ArrayList<>();

    private int run(String... words) {
        return CommandLine.run(
                words,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                opened::add);
    }

    @Test
    void withoutACommandItShowsHowToBegin() {
        assertEquals(0, run());
        assertTrue(out.toString(StandardCharsets.UTF_8).contains("Usage: greyground"), out::toString);
        assertEquals("", err.toString(StandardCharsets.UTF_8));
    }

    @Test
    void deskOpensTheWindowWithTheFileOrEmpty() {
        assertEquals(0, run("desk"));
        assertEquals(0, run("desk", "harbour.tif"));
        assertEquals(List.of(Optional.empty(), Optional.of(Path.of("harbour.tif"))), opened);
    }
}
