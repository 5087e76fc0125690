package greyground.desk.model;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * States one after the other, with the way back and forth. Steps of one gesture, such as a slider being pulled, are one step.
 *
 * @param <S> an immutable state
 */
public final class History<S> {
    private static final int MOST = 400;

    private final Deque<Step<S>> before = new ArrayDeque<>();
    private final Deque<Step<S>> after = new ArrayDeque<>();
    private S present;
    private String gesture = "";

    History(S first) {
        this.present = first;
    }

    /** A state that can be gone to, and what was changed between it and its neighbour. */
    private record Step<S>(S state, String what) {}

    S present() {
        return present;
    }

    /**
     * Goes on to a new state.
     *
     * @param what was changed, as undo names it
     * @param sameGesture a name; steps that follow each other under one name are one step. Empty for a step of its own
     */
    void step(S next, String what, String sameGesture) {
        if (next.equals(present)) {
            return;
        }
        boolean goesOn = !sameGesture.isEmpty() && sameGesture.equals(gesture) && after.isEmpty() && !before.isEmpty();
        if (!goesOn) {
            before.push(new Step<>(present, what));
            if (before.size() > MOST) {
                before.removeLast();
            }
        }
        after.clear();
        present = next;
        gesture = sameGesture;
    }

    /** The gesture is over: the next step is one of its own. */
    void letGo() {
        gesture = "";
    }

    /** A step that was taken: what was changed, the state before it and the one after. */
    record Taken<S>(String what, S before, S after) {}

    /** The steps that undoing would take back, latest first. */
    List<Taken<S>> taken() {
        List<Taken<S>> taken = new ArrayList<>();
        S then = present;
        for (Step<S> step : before) {
            taken.add(new Taken<>(step.what(), step.state(), then));
            then = step.state();
        }
        return taken;
    }

    /** What undoing would take back. */
    Optional<String> undoes() {
        return Optional.ofNullable(before.peek()).map(Step::what);
    }

    /** What redoing would do again. */
    Optional<String> redoes() {
        return Optional.ofNullable(after.peek()).map(Step::what);
    }

    /** Takes the last step back, if there is one. */
    boolean undo() {
        return go(before, after);
    }

    /** Does the step taken back again, if there is one. */
    boolean redo() {
        return go(after, before);
    }

    private boolean go(Deque<Step<S>> from, Deque<Step<S>> to) {
        Step<S> step = from.poll();
        if (step == null) {
            return false;
        }
        to.push(new Step<>(present, step.what()));
        present = step.state();
        letGo();
        return true;
    }
}
