package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Main;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Real small file systems in memory, full or not to be written, seen by the program alone. Where the system lets nobody mount one the
 * tests are left out; {@link KilledIT} has a limit in place of a full disk everywhere.
 */
@EnabledOnOs(value = OS.LINUX, disabledReason = "mounts a file system of Linux")
class UnkindDiskIT {
    private static final String EARLIER = "an earlier one";

    /** Arguments: disk, file on it, what the disk becomes, then the command line. */
    private static final String SCRIPT =
            "disk=$1; file=$2; unkind=$3; shift 3; mount -t tmpfs -o size=200k tmpfs $disk || exit 99;"
                    + " printf '" + EARLIER
                    + "' > $disk/film.pdf; printf '{\"greyground\":\"workshop\",\"version\":1}' > $disk/shop.json;"
                    + " cp $disk/$file /tmp/earlier.$$; eval \"$unkind\" 2>/dev/null; \"$@\"; echo \"status $?\";"
                    + " cmp /tmp/earlier.$$ $disk/$file && echo whole; ls -A $disk | tr '\\n' ' '; rm /tmp/earlier.$$";

    private static final String FULL = "cat /dev/zero > $disk/filler";
    private static final String SEALED = "mount -o remount,ro $disk";

    @TempDir
    Path folder;

    private Path disk;

    @BeforeEach
    void aDiskMayBeMounted() throws Exception {
        disk = Files.createDirectory(folder.resolve("disk"));
        Process trial = new ProcessBuilder("unshare", "-m", "mount", "-t", "tmpfs", "tmpfs", disk.toString())
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        Assumptions.assumeTrue(
                trial.waitFor(30, TimeUnit.SECONDS) && trial.exitValue() == 0, "nobody may mount a file system here");
    }

    private String said(String file, String unkind, Object... words) throws Exception {
        List<String> command =
                new ArrayList<>(List.of("unshare", "-m", "bash", "-c", SCRIPT, "bash", disk.toString(), file, unkind));
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-Djava.awt.headless=true",
                "-cp",
                System.getProperty("java.class.path"),
                Main.class.getName()));
        Arrays.stream(words).map(String::valueOf).forEach(command::add);
        OwnProcess process = OwnProcess.start(folder, command);
        assertEquals(0, process.ended(60), process::said);
        return process.said();
    }

    private static void refused(String said, String reason, String left) {
        List<String> lines = said.lines().toList();
        assertEquals(4, lines.size(), said);
        assertTrue(
                lines.get(0).startsWith("greyground: cannot ") && lines.get(0).contains(reason), said);
        assertEquals(List.of("status 1", "whole", left), lines.subList(1, 4), said);
    }

    private Object[] film() {
        return MalformedArtRun.words(MalformedArt.SOUND.resolve("grey16.tif"), disk.resolve("film.pdf"));
    }

    private Object[] lesson() throws Exception {
        Path readings = Files.writeString(folder.resolve("strip.csv"), "coverage,density\n0,0.12\n50,0.4\n100,2.5\n");
        return new Object[] {
            "read", "--film", readings, "--wedge", WriteAgain.FILM, "--workshop", disk.resolve("shop.json"), "--accept"
        };
    }

    @Test
    void aFullDiskLeavesTheEarlierFilmAndWorkshop() throws Exception {
        String left = "filler film.pdf shop.json ";
        refused(said("film.pdf", FULL, film()), "No space left", left);
        refused(said("shop.json", FULL, lesson()), "No space left", left);
    }

    @Test
    void aSealedDiskIsRefusedBeforeTheWork() throws Exception {
        String left = "film.pdf shop.json ";
        refused(said("film.pdf", SEALED, film()), "write-protected", left);
        refused(said("shop.json", SEALED, lesson()), "write-protected", left);
    }
}
