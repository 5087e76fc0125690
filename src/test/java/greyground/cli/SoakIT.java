package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.bench.Soak;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Many jobs in one process leave it as a few did: the heap after collection, the open files and the threads. */
class SoakIT {
    private static final int JOBS = Math.max(12, Sweep.rounds(60).size());

    /** Caches with a bound may still fill and classes be loaded; a film of this soak holds some 400 KiB, 54 of them far more. */
    private static final int MOST_KIBIBYTES = 4096;

    private static final Pattern FIGURES = Pattern.compile(
            "jobs \\d+ seconds \\d+ heap KiB (\\d+) then (\\d+) files (\\d+) then (\\d+) threads (\\d+) then (\\d+)");

    @TempDir
    Path folder;

    @Test
    void manyJobsHoldNoMoreThanATenthOfThem() throws Exception {
        OwnProcess soak = OwnProcess.start(folder, List.of("-Xmx256m"), Soak.class, folder, JOBS);
        assertEquals(0, soak.ended(240), soak::said);
        Matcher figures = FIGURES.matcher(soak.said().strip());
        assertTrue(figures.matches(), soak::said);
        long grown = Long.parseLong(figures.group(2)) - Long.parseLong(figures.group(1));
        assertTrue(grown < MOST_KIBIBYTES, soak::said);
        assertEquals(figures.group(3), figures.group(4), soak::said);
        assertTrue(Integer.parseInt(figures.group(6)) <= Integer.parseInt(figures.group(5)) + 2, soak::said);
    }
}
