package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Main;
import greyground.app.files.KeptFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Odd names work or are refused in one line, and only ordinary files are ever replaced. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "there, neither links nor such names")
class FileNamesIT {
    private static final Object[] SMALL = {"--plate", "40x30mm", "--resolution", "360", "--ruling", "20"};

    @TempDir
    Path folder;

    private Path art;

    @BeforeEach
    void art() throws IOException {
        art = Files.copy(Path.of("testimages/still-life.png"), folder.resolve("art.png"));
    }

    private static Object[] positive(Object art, Object... more) {
        List<Object> words = new ArrayList<>(List.of("positive", art));
        words.addAll(Arrays.asList(SMALL));
        words.addAll(Arrays.asList(more));
        return words.toArray();
    }

    private List<String> names() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private String refused(Object... words) throws IOException {
        List<String> before = names();
        Attempt attempt = Attempt.of(words);
        assertTrue(attempt.status() == 1 || attempt.status() == 2, Arrays.toString(words) + attempt);
        assertEquals(1, attempt.err().lines().count(), attempt.err());
        assertFalse(attempt.err().contains("unforeseen"), attempt.err());
        assertEquals(before, names());
        return attempt.err();
    }

    @Test
    void onlyOrdinaryFilesAreReplaced() throws Exception {
        Path nothing = Files.createSymbolicLink(folder.resolve("nothing.pdf"), Path.of("none"));
        Path itself = Files.createSymbolicLink(folder.resolve("itself.pdf"), Path.of("itself.pdf"));
        Path device = Files.createSymbolicLink(folder.resolve("device.pdf"), Path.of("/dev/null"));
        Path pipe = folder.resolve("pipe.pdf");
        assertEquals(0, new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor());
        Path sub = Files.createDirectory(folder.resolve("sub.pdf"));
        for (Path link : List.of(nothing, itself)) {
            assertTrue(refused(positive(art, "--out", link)).contains("a link that leads to no file"));
            assertTrue(Files.isSymbolicLink(link));
        }
        for (Path other : List.of(device, pipe, Path.of("/dev/null"))) {
            assertTrue(refused(positive(art, "--out", other)).contains("device or pipe"));
        }
        assertTrue(refused(positive(art, "--out", sub)).contains("it is a folder"));
        assertTrue(refused(positive(art, "--out", folder.resolve("f.pdf"), "--tiff", device))
                .contains("device or pipe"));
        assertTrue(refused("wedge", "--out", device).contains("device or pipe"));
        assertTrue(refused("proof", art, "--plate", "40x30mm", "--out", pipe).contains("device or pipe"));
        assertFalse(Files.isRegularFile(Path.of("/dev/null")));
        assertFalse(Files.isRegularFile(pipe, LinkOption.NOFOLLOW_LINKS));
    }

    @Test
    void aLinkToAFileIsWrittenThrough() throws Exception {
        Path real = Files.writeString(
                Files.createDirectory(folder.resolve("films")).resolve("real.pdf"), "an earlier film");
        Path link = Files.createSymbolicLink(folder.resolve("film.pdf"), Path.of("films/real.pdf"));
        Attempt.done(positive(art, "--out", link));
        assertTrue(Files.isSymbolicLink(link));
        assertTrue(KeptFiles.isPdf(real));
    }

    @ParameterizedTest
    @CsvSource({
        "positive,--out,film.png,film.pdf",
        "positive,--out,film.tif,film.pdf",
        "positive,--out,film,film.pdf",
        "positive,--out,harbour.v2,harbour.v2.pdf",
        "positive,--tiff,film.pdf,film.tif",
        "positive,--job,job.pdf,job.json",
        "wedge,--out,test.json,test.pdf",
        "proof,--out,print.pdf,print.png",
        "proof,--copper,print.jpg,print.png",
        "proof,--diagram,tones.txt,tones.svg",
    })
    void anEndingSaysWhatIsInTheFile(String command, String option, String name, String right) throws Exception {
        List<Object> words = new ArrayList<>(List.of(command));
        if (!command.equals("wedge")) {
            words.add(art);
        }
        if (command.equals("positive") && !option.equals("--out")) {
            words.addAll(List.of("--out", folder.resolve("other.pdf")));
        }
        words.addAll(List.of(option, folder.resolve(name)));
        String said = refused(words.toArray());
        assertTrue(said.contains("such as " + right + System.lineSeparator()), said);
    }

    @Test
    void nothingGoesToAFileNamedLikeStandardOutput() throws Exception {
        String said = refused(positive(art, "--out", "-"));
        assertTrue(said.contains("never to standard output"), said);
        assertTrue(refused("wedge", "--out=-").contains("never to standard output"));
        assertTrue(refused("proof", art, "--out", "-").contains("never to standard output"));
        assertTrue(refused(positive(art, "--out", folder.resolve("f.pdf"), "--tiff", "-"))
                .contains("standard output"));
        assertTrue(refused(positive(art, "--out", "")).contains("give it a name"));
        assertFalse(Files.exists(Path.of("-")));
    }

    @Test
    void longAndBrokenNamesWork() throws Exception {
        for (String stem : List.of("x".repeat(251), "\u00e9".repeat(125), "new\nline", "-dash", " ", "a.b.c")) {
            Path picture = Files.copy(art, folder.resolve(stem + ".png"));
            Path film = folder.resolve(stem + ".pdf");
            Attempt.done(positive(picture, "--out", film));
            assertTrue(KeptFiles.isPdf(film), stem);
            String title = KeptFiles.job(film).title();
            assertTrue(
                    title.length() <= 120 && stem.replace('\n', ' ').strip().startsWith(title.replace("...", "")),
                    title);
            Files.delete(film);
            Files.delete(picture);
        }
        refused(positive(art, "--out", folder.resolve("x".repeat(252) + ".pdf")));
        assertTrue(
                refused(positive("-art.png", "--out", folder.resolve("f.pdf"))).contains("written ./-art.png"));
    }

    /** What a system can't spell would be read from, or written to, another file. */
    @Test
    void namesThatTheSystemCannotSpellAreRefused() throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        for (String odd :
                List.of("LC_ALL=C; name=$(printf 'f\\303\\251.pdf')", "LC_ALL=C.UTF-8; name=$(printf 'f\\351.pdf')")) {
            OwnProcess process = OwnProcess.start(
                    folder,
                    List.of(
                            "sh",
                            "-c",
                            "export " + odd + "; exec \"$@\" --out \"$name\"",
                            "sh",
                            java,
                            "-XX:TieredStopAtLevel=1",
                            "-Djava.awt.headless=true",
                            "-cp",
                            System.getProperty("java.class.path"),
                            Main.class.getName(),
                            "wedge"));
            assertEquals(2, process.ended(60), process.said());
            assertEquals(1, process.said().lines().count(), process.said());
            assertTrue(process.said().contains("can't spell"), process.said());
            assertFalse(process.said().contains("java."), process.said());
        }
        OwnProcess process = OwnProcess.start(
                folder,
                List.of(
                        "sh",
                        "-c",
                        "mkdir \"$0\" && cd \"$0\" && export LC_ALL=C && exec \"$@\"",
                        folder + "/f\u00e9",
                        java,
                        "-XX:TieredStopAtLevel=1",
                        "-Djava.awt.headless=true",
                        "-cp",
                        Stream.of(System.getProperty("java.class.path").split(":"))
                                .map(part -> Path.of(part).toAbsolutePath().toString())
                                .collect(Collectors.joining(":")),
                        Main.class.getName(),
                        "wedge",
                        "--out",
                        "f.pdf"));
        assertEquals(2, process.ended(60), process.said());
        assertEquals(1, process.said().lines().count(), process.said());
        assertTrue(process.said().contains("the folder you are in"), process.said());
        try (Stream<Path> here = Files.list(Path.of(""))) {
            assertTrue(here.noneMatch(file -> file.toString().endsWith(".pdf")));
        }
    }
}
