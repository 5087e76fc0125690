package greyground.desk.model;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds room for words in a diagram: of the places where each may stand, the first that touches neither another label nor a line, or else
 * the one that touches least. Knows nothing of the window; lengths are its pixels.
 */
public final class LabelPlaces {
    private static final double STEP = 3;

    private final List<double[]> points = new ArrayList<>();
    private final List<Viewport.Area> taken = new ArrayList<>();

    /** A line that no label should lie on. */
    public void line(double fromX, double fromY, double toX, double toY) {
        int steps = (int) Math.ceil(Math.max(Math.abs(toX - fromX), Math.abs(toY - fromY)) / STEP) + 1;
        for (int i = 0; i <= steps; i++) {
            double share = (double) i / steps;
            points.add(new double[] {fromX + share * (toX - fromX), fromY + share * (toY - fromY)});
        }
    }

    /**
     * Chooses a place, and keeps later labels off it.
     *
     * @param candidates the likeliest first; at least one
     */
    public Viewport.Area place(List<Viewport.Area> candidates) {
        Viewport.Area best = candidates.get(0);
        long least = Long.MAX_VALUE;
        for (Viewport.Area candidate : candidates) {
            long touched = touched(candidate);
            if (touched < least) {
                least = touched;
                best = candidate;
            }
        }
        taken.add(best);
        return best;
    }

    /** Labels count far more than lines: words over words can't be read at all. */
    private long touched(Viewport.Area area) {
        long lines = points.stream()
                .filter(point -> point[0] > area.left()
                        && point[0] < area.left() + area.width()
                        && point[1] > area.top()
                        && point[1] < area.top() + area.height())
                .count();
        return lines
                + 1_000_000
                        * taken.stream().filter(other -> overlap(area, other)).count();
    }

    static boolean overlap(Viewport.Area one, Viewport.Area other) {
        return one.left() < other.left() + other.width()
                && other.left() < one.left() + one.width()
                && one.top() < other.top() + other.height()
                && other.top() < one.top() + one.height();
    }
}
