package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    /** An example is copied as it stands: no line of it may be broken, and no file may be named twice, once to be written over. */
    @ParameterizedTest
    @ValueSource(strings = {"positive", "proof", "plan", "record", "plates", "gather", "wedge", "read", "desk"})
    void examplesInTheHelpCanBeCopied(String command) {
        assertEquals(0, run(command, "--help"));
        List<String> lines = out.toString(StandardCharsets.UTF_8).lines().toList();
        List<String> examples = lines.subList(lines.indexOf("Examples:") + 1, lines.size()).stream()
                .takeWhile(line -> !line.isEmpty())
                .toList();
        assertTrue(examples.size() >= 2, command);
        examples.forEach(line -> assertTrue(line.startsWith("  "), line));
        String.join("\n", examples)
                .replace("\\\n", " ")
                .lines()
                .filter(line -> line.startsWith("  greyground"))
                .forEach(example -> {
                    List<String> files = Arrays.stream(example.strip().split("\\s+"))
                            .filter(word -> word.matches("[a-z]+\\.[a-z]+"))
                            .toList();
                    assertEquals(files.stream().distinct().toList(), files, example);
                });
    }

    /** A broken installation and the end of memory reach the user as one line, like any fault. */
    @Test
    void anErrorOfTheMachineIsOneLine() {
        for (Error error : List.of(
                new NoClassDefFoundError("greyground/Missing"),
                new ExceptionInInitializerError(new OutOfMemoryError()),
                new StackOverflowError())) {
            err.reset();
            int status = CommandLine.run(
                    new String[] {"desk"},
                    new PrintStream(out, true, StandardCharsets.UTF_8),
                    new PrintStream(err, true, StandardCharsets.UTF_8),
                    file -> {
                        throw error;
                    });
            assertEquals(1, status);
            String said = err.toString(StandardCharsets.UTF_8);
            assertTrue(said.startsWith("greyground: "), said);
            assertEquals(1, said.strip().lines().count(), said);
            assertEquals(error instanceof ExceptionInInitializerError, said.contains("not enough memory"), said);
        }
    }

    @Test
    void aWordThatBeginsWithAnAtIsNoFileOfWords(@TempDir Path folder) throws IOException {
        Path words = Files.writeString(folder.resolve("words.txt"), "--version");
        assertEquals(2, run("@" + words));
        assertTrue(err.toString(StandardCharsets.UTF_8).contains("@"), err::toString);
    }

    /** The parser's own sentences, which never speak of its parts. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "positive",
                "positive --out",
                "positive a.png --out --tiff b.tif",
                "positive a.png --out a.pdf --out b.pdf",
                "positive a.png b.png --out a.pdf",
                "positive a.png --out a.pdf --tile=perhaps",
                "positive a.png --out a.pdf --json=perhaps",
                "positive a.png --out a.pdf --page",
                "positive a.png --out a.pdf -x",
                "positive a.png --out a.pdf --unknown=1",
                "positive a.png --out \0.pdf",
                "plan a.pdf --measured",
                "read --workshop",
                "help nothing",
                "--unknown",
                "etch",
            })
    void whatTheParserCannotReadIsOneLineInOurWords(String line) {
        assertEquals(2, run(line.split(" ")), err::toString);
        String said = err.toString(StandardCharsets.UTF_8);
        assertEquals(1, said.lines().count(), said);
        assertTrue(said.startsWith("greyground: "), said);
        assertFalse(said.matches("(?is).*(exception|picocli|java|class |argspec|null).*"), said);
    }

    /** What nobody watched is one line, too; of too little memory whoever waited for it speaks. */
    @Test
    void aThreadThatDiesSaysOneLine() {
        CommandLine.died(
                new IllegalStateException("a fault\nof two lines"), new PrintStream(out, true, StandardCharsets.UTF_8));
        String said = out.toString(StandardCharsets.UTF_8);
        assertEquals(1, said.lines().count(), said);
        assertTrue(said.startsWith("greyground: an unforeseen fault; "), said);
        assertFalse(said.contains("a fault") || said.contains("Exception"), said);
        out.reset();
        CommandLine.died(
                new IllegalStateException(new OutOfMemoryError("heap")),
                new PrintStream(out, true, StandardCharsets.UTF_8));
        assertEquals("", out.toString(StandardCharsets.UTF_8));
    }
}
