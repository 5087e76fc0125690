package greyground.scan;

import greyground.chart.Area;
import java.util.ArrayList;
import java.util.List;

/** The four edges of a field, each a pattern of its own, since what lies beside it differs from side to side. */
final class EdgePatterns {
    private static final double INSIDE = 500;

    /** Half the clear film between two fields. */
    private static final double OUTSIDE = 330;

    private static final double ACROSS = 80;
    private static final double ALONG = 250;
    private static final double CORNER = 400;

    /** Softness of an edge on the scan, as the standard deviation of a bell (assumed). */
    private static final double SOFT = 120;

    private EdgePatterns() {}

    /** Patterns of an area's left, right, top and bottom edge. */
    static List<Pattern> of(Area area) {
        return List.of(
                edge(area.left(), 1, area.top(), area.bottom(), true),
                edge(area.right(), -1, area.top(), area.bottom(), true),
                edge(area.top(), 1, area.left(), area.right(), false),
                edge(area.bottom(), -1, area.left(), area.right(), false));
    }

    private static Pattern edge(double at, int inwards, double from, double to, boolean upright) {
        List<double[]> places = new ArrayList<>();
        for (double along = from + CORNER; along <= to - CORNER; along += ALONG) {
            for (double across = -OUTSIDE; across <= INSIDE; across += ACROSS) {
                places.add(new double[] {across, along});
            }
        }
        Pattern pattern = new Pattern(places.size());
        for (int i = 0; i < places.size(); i++) {
            double across = places.get(i)[0];
            double along = places.get(i)[1];
            double far = across / SOFT;
            // The logistic curve of the same deviation stands for the bell's sum.
            double ink = 1 / (1 + StrictMath.exp(-1.702 * far));
            double rise = 1.702 / SOFT * ink * (1 - ink) * inwards;
            double place = at + inwards * across;
            pattern.set(
                    i, upright ? place : along, upright ? along : place, ink, upright ? rise : 0, upright ? 0 : rise);
        }
        return pattern;
    }
}
