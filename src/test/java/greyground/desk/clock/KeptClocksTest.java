package greyground.desk.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.model.DeskFolder;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Step;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Clocks go on while no program runs, as far as the time of day says. */
class KeptClocksTest {
    /** No process has this number: Linux gives none above 4 194 304 (PID_MAX_LIMIT, linux/threads.h). */
    private static final long GONE = 9_999_999_999L;

    @TempDir
    Path folder;

    private long nanos = 5;
    private Instant day = Instant.parse("2026-03-04T10:00:00Z");

    private void pass(double seconds) {
        nanos += (long) (seconds * 1e9);
        day = day.plusNanos((long) (seconds * 1e9));
    }

    private KeptClocks kept(long process) {
        return new KeptClocks(new DeskFolder(folder), process, () -> day);
    }

    private BenchClocks planned() {
        BenchClocks clocks = new BenchClocks(() -> nanos);
        clocks.plan("leaf", new ExposurePlan(List.of(step("Thin", 60), step("Bite", 1200), step("Hold", 900)), "", ""));
        return clocks;
    }

    private static Step step(String title, double seconds) {
        return new Step(title, seconds, List.of(), List.of(), List.of(), List.of("gloves"), Optional.empty());
    }

    private BenchClocks started(long process) {
        // Another start of the system: its clock of nanoseconds begins anywhere.
        nanos = 77_000_000_000_000L;
        BenchClocks clocks = new BenchClocks(() -> nanos);
        kept(process).takeUp(clocks);
        return clocks;
    }

    private static BenchClocks.StepClock clock(BenchClocks clocks, String step) {
        return clocks.of(step).orElseThrow();
    }

    private List<String> files() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    @Test
    void whatRanHasRunOnAndWhatStoodStands() throws IOException {
        BenchClocks clocks = planned();
        KeptClocks kept = kept(GONE);
        clock(clocks, "Bite").startOrStop();
        kept.keep(clocks);
        pass(100);
        clock(clocks, "Hold").startOrStop();
        kept.keep(clocks);
        pass(30);
        clock(clocks, "Hold").startOrStop();
        kept.keep(clocks);
        pass(7);
        // Nothing is written any more: a kill. Then ten minutes without a program.
        pass(600);
        BenchClocks again = started(1);
        assertEquals(Countdown.words(1200 - 737), clock(again, "Bite").words());
        assertTrue(clock(again, "Bite").isRunning());
        assertEquals(Countdown.words(900 - 30), clock(again, "Hold").words());
        assertFalse(clock(again, "Hold").isRunning());
        assertTrue(again.of("Thin").isEmpty(), "what has not begun is the plan's");
        assertEquals(List.of("gloves"), clock(again, "Bite").cautions());
        assertEquals("Hold", clock(again, "Bite").next());
        assertEquals(List.of("clocks-1.json"), files(), "one file holds them now");
        pass(13);
        assertEquals(Countdown.words(1200 - 750), clock(again, "Bite").words());
        // The plan comes again, and finds its clock.
        again.plan("leaf", new ExposurePlan(List.of(step("Bite", 1200)), "", ""));
        assertEquals("", clock(again, "Bite").change());
        assertEquals(Countdown.words(1200 - 750), clock(again, "Bite").words());
    }

    @Test
    void whatRanOutMeanwhileRingsOnceAndCountsOn() {
        BenchClocks clocks = planned();
        clock(clocks, "Thin").startOrStop();
        kept(GONE).keep(clocks);
        pass(3600);
        BenchClocks again = started(1);
        assertEquals("+59:00", clock(again, "Thin").words());
        assertEquals(1, again.ranOut().size());
        kept(1).keep(again);
        BenchClocks third = new BenchClocks(() -> nanos);
        KeptClocks last = kept(1);
        last.takeUp(third);
        assertEquals(0, third.ranOut().size(), "its end was told");
        clock(third, "Thin").setBack();
        last.keep(third);
        assertEquals(0, started(1).begun().size(), "what was set back is gone");
    }

    /** The system's clock may be set back; a clock never runs backwards. */
    @Test
    void noTimePassesWhereTheTimeOfDayWasSetBack() {
        BenchClocks clocks = planned();
        clock(clocks, "Bite").startOrStop();
        pass(60);
        clock(clocks, "Thin").startOrStop();
        kept(GONE).keep(clocks);
        day = day.minusSeconds(7200);
        assertEquals(Countdown.words(1140), clock(started(1), "Bite").words());
    }

    @Test
    void clocksOfADeskThatRunsStayItsOwnAndSpoiltFilesAreNone() throws IOException {
        BenchClocks clocks = planned();
        clock(clocks, "Bite").startOrStop();
        long running = ProcessHandle.current().pid();
        kept(running).keep(clocks);
        assertEquals(0, started(running + 1).begun().size());
        for (String text : new String[] {
            "{\"greyground\": \"desk cl",
            "{\"greyground\": \"desk clocks\", \"version\": 1, \"clocks\": [{\"step\": \"Bite\", \"seconds\": -4}]}",
            "{\"greyground\": \"desk clocks\", \"version\": 1, \"clocks\": [{\"step\": \"Bite\", \"seconds\": 60, \"ranSeconds\": -1}]}",
            "{\"greyground\": \"desk clocks\", \"version\": 1, \"clocks\": 7}",
            "{\"greyground\": \"desk clocks\", \"version\": 99, \"clocks\": []}",
        }) {
            Files.writeString(folder.resolve("clocks-" + GONE + ".json"), text);
            assertEquals(0, started(running + 1).begun().size(), text);
        }
    }
}
