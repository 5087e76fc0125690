package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Main;
import greyground.output.ExternalTool;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every file that the user keeps is on the disk before it takes its name, and the name is on the disk before the program goes on. Outside
 * authority: strace, the system's own record of what was asked of it (fsync(2) and rename(2)).
 */
class DurableFilesIT {
    private static final List<String> KEPT = List.of("film.pdf", "film.tif", "job.json");

    @TempDir
    private static Path made;

    private static List<String> asked = List.of();

    private static List<String> asked() throws Exception {
        if (asked.isEmpty()) {
            Assumptions.assumeTrue(ExternalTool.traces(), "no process may be traced here");
            Path folder = made.toRealPath();
            Path trace = folder.resolve("trace.txt");
            List<Object> command = new ArrayList<>(List.of(
                    "strace",
                    "-f",
                    "--seccomp-bpf",
                    "-qq",
                    "-y",
                    "-s",
                    "400",
                    "-e",
                    "trace=openat,creat,rename,renameat,renameat2,link,linkat,fsync,fdatasync",
                    "-o",
                    trace,
                    Path.of(System.getProperty("java.home"), "bin", "java"),
                    "-XX:TieredStopAtLevel=1",
                    "-Djava.awt.headless=true",
                    "-cp",
                    System.getProperty("java.class.path"),
                    Main.class.getName()));
            command.addAll(Arrays.asList(
                    MalformedArtRun.words(MalformedArt.SOUND.resolve("grey16.tif"), folder.resolve("film.pdf"))));
            command.addAll(List.of("--tiff", folder.resolve("film.tif"), "--job", folder.resolve("job.json")));
            OwnProcess process = OwnProcess.start(
                    folder, command.stream().map(String::valueOf).toList());
            assertEquals(0, process.ended(120), process::said);
            asked = Files.readAllLines(trace, StandardCharsets.ISO_8859_1).stream()
                    .filter(line -> line.contains(folder + "/") || line.contains("<" + folder + ">"))
                    .filter(line -> !line.contains("= -1 "))
                    .toList();
        }
        return asked;
    }

    private static int first(List<String> lines, int from, String... parts) {
        for (int i = from; i < lines.size(); i++) {
            if (Arrays.stream(parts).allMatch(lines.get(i)::contains)) {
                return i;
            }
        }
        return -1;
    }

    @ParameterizedTest
    @ValueSource(strings = {"film.pdf", "film.tif", "job.json"})
    void aFileIsSyncedThenNamedThenItsFolderIsSynced(String name) throws Exception {
        List<String> lines = asked();
        String sibling = "/." + name + ".greyground-";
        int opened = first(lines, 0, "openat(", sibling, "O_CREAT|O_EXCL");
        int synced = first(lines, opened, "fsync(", sibling);
        int named = first(lines, opened, "rename", sibling, "/" + name + "\"");
        int folder = first(lines, named, "fsync(", "<" + made.toRealPath() + ">");
        assertTrue(
                opened >= 0 && opened < synced && synced < named && named < folder,
                name + ": opened " + opened + ", synced " + synced + ", named " + named + ", folder " + folder + " of "
                        + lines);
    }

    /** Nothing is ever opened for writing under a name that the user keeps. */
    @Test
    void noKeptNameIsWrittenInto() throws Exception {
        for (String line : asked()) {
            for (String name : KEPT) {
                assertTrue(
                        !line.contains("openat(") || !line.contains("/" + name + "\"") || line.contains("O_RDONLY"),
                        line);
            }
        }
    }
}
