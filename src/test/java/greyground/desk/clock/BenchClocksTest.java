package greyground.desk.clock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.desk.look.Bell;
import greyground.plan.ExposurePlan;
import greyground.plan.ExposurePlan.Step;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class BenchClocksTest {
    private long nanos = 1;
    private final BenchClocks clocks = new BenchClocks(() -> nanos);

    private void pass(double seconds) {
        nanos += (long) (seconds * 1e9);
    }

    private static Step step(String title, double seconds) {
        return new Step(title, seconds, List.of(), List.of(), List.of(), List.of("gloves"), Optional.empty());
    }

    private static ExposurePlan plan(Step... steps) {
        return new ExposurePlan(List.of(steps), "", "");
    }

    private BenchClocks.StepClock clock(String step) {
        return clocks.of(step).orElseThrow();
    }

    @Test
    void onlyTimedStepsHaveClocksAndEachKnowsWhatComesNext() {
        clocks.plan("leaf", plan(step("Thin", 60), step("Look", 0), step("Bite", 1200)));
        assertEquals(
                List.of("Thin", "Bite"),
                clocks.all().stream().map(BenchClocks.StepClock::step).toList());
        assertEquals("Look", clock("Thin").next());
        assertEquals("", clock("Bite").next());
        assertEquals(List.of("gloves"), clock("Bite").cautions());
        assertEquals(List.of(), clocks.begun());
    }

    @Test
    void severalRunAtOnceAndWhatIsOverComesFirst() {
        clocks.plan("leaf", plan(step("Thin", 60), step("Hold", 900), step("Bite", 1200)));
        clock("Bite").startOrStop();
        pass(10);
        clock("Thin").startOrStop();
        clock("Hold").startOrStop();
        pass(1);
        clock("Hold").startOrStop();
        assertEquals(
                List.of("Thin", "Bite", "Hold"),
                clocks.begun().stream().map(BenchClocks.StepClock::step).toList(),
                "running ones by the time left, then those that stand");
        pass(1189);
        assertTrue(clock("Bite").isOver());
        assertEquals("+18:50", clock("Thin").words(), "60 s of the 1190 s since it began");
    }

    @Test
    void aClockRingsOnceAndAgainOnlyAfterItWasSetBack() {
        clocks.plan("leaf", plan(step("Thin", 60)));
        clock("Thin").startOrStop();
        pass(59);
        assertEquals(List.of(), clocks.ranOut());
        pass(2);
        assertEquals(List.of(clock("Thin")), clocks.ranOut());
        pass(5);
        assertEquals(List.of(), clocks.ranOut());
        clock("Thin").setBack();
        assertEquals(List.of(), clocks.ranOut());
        clock("Thin").startOrStop();
        pass(61);
        assertEquals(1, clocks.ranOut().size());
    }

    @Test
    void aClockThatRunsOutlivesAChangeOfThePlanAndSaysSo() {
        clocks.plan("leaf", plan(step("Thin", 60), step("Bite", 1200)));
        clock("Bite").startOrStop();
        pass(100);
        clocks.plan("leaf", plan(step("Thin", 90), step("Bite", 1500)));
        assertEquals("1:30", clock("Thin").words(), "what has not begun follows the plan");
        assertEquals("18:20", clock("Bite").words());
        assertEquals(
                "The plan has changed to 25:00; this clock was set to 20:00.",
                clock("Bite").change());
        assertEquals(Optional.of(1500.0), clock("Bite").otherwise());
        clock("Bite").takePlanned();
        assertEquals("23:20", clock("Bite").words());
        assertEquals("", clock("Bite").change());
    }

    @Test
    void aStepThatIsNoLongerPlannedKeepsItsClockUntilItIsSetBack() {
        clocks.plan("leaf", plan(step("Bite", 1200)));
        clock("Bite").startOrStop();
        pass(60);
        clocks.plan("other", plan(step("Thin", 60)));
        assertEquals(
                "The plan no longer has this step; this clock was set to 20:00 for leaf.",
                clock("Bite").change());
        assertEquals(2, clocks.all().size());
        clock("Bite").setBack();
        clocks.forgetTheDone();
        assertEquals(1, clocks.all().size());
        assertFalse(clocks.of("Bite").isPresent());
    }

    /** The bell's samples: three tones of 880 Hz (A, ISO 16's 440 Hz an octave up), counted by their zero crossings. */
    @Test
    void theBellIsThreeTonesThatBeginAndEndInSilence() {
        byte[] samples = Bell.samples();
        int crossings = 0;
        int before = 0;
        for (int i = 0; i + 1 < samples.length; i += 2) {
            int value = samples[i + 1] << 8 | samples[i] & 0xFF;
            if (before != 0 && value != 0 && (before < 0) != (value < 0)) {
                crossings++;
            }
            before = value == 0 ? before : value;
        }
        // Two crossings a period; the seams between tones may add one each.
        assertEquals(3 * 0.35 * 880 * 2, crossings, 6);
        assertEquals(0, samples[0]);
        assertEquals(0, samples[samples.length - 1]);
    }
}
