package greyground.desk.clock;

import greyground.plan.ExposurePlan;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;

/**
 * The clocks of a plan's timed steps. Several may run at once. A clock that has begun outlives every change of the plan: it runs for
 * the time it was started with, and says when the plan has come to want another. One thread uses it.
 */
public final class BenchClocks {
    private final LongSupplier nanoTime;
    private List<StepClock> clocks = new ArrayList<>();

    public BenchClocks(LongSupplier nanoTime) {
        this.nanoTime = nanoTime;
    }

    public static final class StepClock extends Countdown {
        private final String plate;
        private final String step;
        private final String next;
        private final List<String> cautions;
        private double planned;
        private boolean rung;

        private StepClock(Begun begun, LongSupplier nanoTime) {
            super(begun.seconds(), nanoTime);
            this.plate = begun.plate();
            this.step = begun.step();
            this.next = begun.next();
            this.cautions = begun.cautions();
            this.planned = begun.seconds();
            this.rung = begun.rung();
            resume(begun.ran(), begun.running());
        }

        private Begun now() {
            return new Begun(plate, step, next, cautions, seconds(), ran(), isRunning(), rung);
        }

        public String step() {
            return step;
        }

        /** Title of the step that follows; empty after the last. */
        public String next() {
            return next;
        }

        public List<String> cautions() {
            return cautions;
        }

        public void startOrStop() {
            if (isRunning()) {
                stop();
            } else {
                start();
            }
        }

        /** Stands at its whole time again, the plan's if that has changed. */
        public void setBack() {
            reset();
            rung = false;
            if (planned > 0) {
                takePlanned();
            }
        }

        /** What pressing start would do: "Start", "Stop" or "Continue". */
        public String act() {
            return isRunning() ? "Stop" : hasBegun() ? "Continue" : "Start";
        }

        /** Seconds that the plan wants now, if they are not this clock's. 0: the step is no longer in the plan. */
        public Optional<Double> otherwise() {
            return planned == seconds() ? Optional.empty() : Optional.of(planned);
        }

        /** Says what the plan wants now, if that is not what runs; else empty. */
        public String change() {
            if (otherwise().isEmpty()) {
                return "";
            }
            String runs = "this clock was set to " + words(seconds());
            return planned > 0
                    ? "The plan has changed to " + words(planned) + "; " + runs + "."
                    : "The plan no longer has this step; " + runs + " for " + plate + ".";
        }

        /** Runs for what the plan wants now; the time that has passed counts. */
        public void takePlanned() {
            lasts(planned);
            rung = rung && isOver();
        }
    }

    /**
     * A clock at one moment.
     *
     * @param plate its title
     * @param step its title
     * @param next title of the step that follows; empty after the last
     * @param cautions of the step
     * @param seconds that it was set to run, above 0
     * @param ran seconds that have passed of it, at least 0
     * @param running whether it runs
     * @param rung whether its end was told
     */
    public record Begun(
            String plate,
            String step,
            String next,
            List<String> cautions,
            double seconds,
            double ran,
            boolean running,
            boolean rung) {
        private static final double LONGEST = 1e9;

        public Begun {
            cautions = List.copyOf(cautions);
            if (!(seconds > 0 && seconds <= LONGEST) || !(ran >= 0 && ran <= LONGEST)) {
                throw new IllegalArgumentException("a clock of " + seconds + " s can't have run " + ran + " s");
            }
        }
    }

    /** Those that have begun, as they stand. */
    List<Begun> asTheyStand() {
        return begun().stream().map(StepClock::now).toList();
    }

    /** Takes up a clock that was begun before, unless one of its step is there; it goes on as it stands. */
    void takeUp(Begun clock) {
        if (of(clock.step()).filter(StepClock::hasBegun).isEmpty()) {
            clocks.add(new StepClock(clock, nanoTime));
        }
    }

    /** The steps as they are planned now. */
    public void plan(String plate, ExposurePlan plan) {
        List<StepClock> old = new ArrayList<>(clocks);
        List<StepClock> made = new ArrayList<>();
        List<ExposurePlan.Step> steps = plan.steps();
        for (int i = 0; i < steps.size(); i++) {
            ExposurePlan.Step step = steps.get(i);
            if (step.seconds() <= 0) {
                continue;
            }
            Optional<StepClock> begun = old.stream()
                    .filter(clock -> clock.hasBegun() && clock.step().equals(step.title()))
                    .findFirst();
            if (begun.isPresent()) {
                begun.get().planned = step.seconds();
                old.remove(begun.get());
                made.add(begun.get());
            } else {
                String next = i + 1 < steps.size() ? steps.get(i + 1).title() : "";
                made.add(new StepClock(
                        new Begun(plate, step.title(), next, step.cautions(), step.seconds(), 0, false, false),
                        nanoTime));
            }
        }
        for (StepClock left : old) {
            if (left.hasBegun()) {
                left.planned = 0;
                made.add(left);
            }
        }
        clocks = made;
    }

    /** All, in the plan's order; those of steps that have gone come last. */
    public List<StepClock> all() {
        return List.copyOf(clocks);
    }

    public Optional<StepClock> of(String step) {
        return clocks.stream().filter(clock -> clock.step().equals(step)).findFirst();
    }

    /** Those that were started and not set back: over first, then running, then stopped, each by the time left. */
    public List<StepClock> begun() {
        return clocks.stream()
                .filter(StepClock::hasBegun)
                .sorted(Comparator.<StepClock>comparingInt(clock -> clock.isOver() ? 0 : clock.isRunning() ? 1 : 2)
                        .thenComparingDouble(clock -> clock.isOver() ? -clock.left() : clock.left()))
                .toList();
    }

    /** Those that have run out since this was last asked; each is told once. */
    public List<StepClock> ranOut() {
        List<StepClock> out = new ArrayList<>();
        for (StepClock clock : clocks) {
            if (clock.isOver() && !clock.rung) {
                clock.rung = true;
                out.add(clock);
            }
        }
        return out;
    }

    /** Clocks of steps that are no longer planned go once they are set back. */
    public void forgetTheDone() {
        clocks.removeIf(clock -> clock.planned == 0 && !clock.hasBegun());
    }
}
