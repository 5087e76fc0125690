package greyground.scan;

import greyground.chart.Area;
import greyground.chart.CornerCode;
import java.util.ArrayList;
import java.util.List;

/**
 * What the scan is laid against to place a plate: places on it with the share of ink each should show. The ink's and the paper's light
 * are not told: they come from the scan.
 */
record Pattern(List<Mark> marks) {
    /** Clear modules about a code that belong to its pattern. */
    private static final int RIM = 2;

    private static final int STEPS_PER_MODULE = 4;

    /** Softness of a code in steps, half a module: scan, bite and ink soften a print's edges (assumed). */
    private static final double SOFT_STEPS = 2;

    // Of a field's edge, in micrometres: how far its pattern reaches, half the clear film between two fields outwards.
    private static final double INSIDE = 500;
    private static final double OUTSIDE = 330;
    private static final double ACROSS = 80;
    private static final double ALONG = 250;
    private static final double CORNER = 400;

    /** Softness of a field's edge on the scan, as the standard deviation of a bell (assumed). */
    private static final double SOFT_EDGE = 120;

    /**
     * One place.
     *
     * @param x on the plate, in micrometres
     * @param y on the plate
     * @param ink share it should show, 0 to 1
     * @param riseX how that rises across, per micrometre
     * @param riseY how that rises down
     */
    record Mark(double x, double y, double ink, double riseX, double riseY) {}

    Pattern {
        marks = List.copyOf(marks);
    }

    /** A corner code as it should look, softened. */
    static Pattern of(CornerCode code) {
        int side = (CornerCode.MODULES + 2 * RIM) * STEPS_PER_MODULE;
        float[] dark = new float[side * side];
        for (CornerCode.Run run : code.runs()) {
            for (int y = (RIM + run.row()) * STEPS_PER_MODULE; y < (RIM + run.row() + 1) * STEPS_PER_MODULE; y++) {
                for (int x = (RIM + run.from()) * STEPS_PER_MODULE; x < (RIM + run.to()) * STEPS_PER_MODULE; x++) {
                    dark[y * side + x] = 1;
                }
            }
        }
        float[] soft = softened(softened(dark, side), side);
        double step = (double) code.area().width() / CornerCode.MODULES / STEPS_PER_MODULE;
        List<Mark> marks = new ArrayList<>();
        for (int y = 1; y < side - 2; y += 2) {
            for (int x = 1; x < side - 2; x += 2) {
                marks.add(new Mark(
                        code.area().left() + (x + 0.5 - RIM * STEPS_PER_MODULE) * step,
                        code.area().top() + (y + 0.5 - RIM * STEPS_PER_MODULE) * step,
                        soft[y * side + x],
                        (soft[y * side + x + 1] - soft[y * side + x - 1]) / (2 * step),
                        (soft[(y + 1) * side + x] - soft[(y - 1) * side + x]) / (2 * step)));
            }
        }
        return new Pattern(marks);
    }

    /** Along rows by a bell, and turned about its diagonal: twice is both ways. */
    private static float[] softened(float[] values, int side) {
        int reach = (int) Math.ceil(3 * SOFT_STEPS);
        double[] bell = new double[reach + 1];
        double sum = 0;
        for (int i = -reach; i <= reach; i++) {
            bell[Math.abs(i)] = StrictMath.exp(-i * i / (2 * SOFT_STEPS * SOFT_STEPS));
            sum += bell[Math.abs(i)];
        }
        float[] turned = new float[values.length];
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                double mean = 0;
                for (int i = -reach; i <= reach; i++) {
                    int at = Math.max(0, Math.min(side - 1, x + i));
                    mean += bell[Math.abs(i)] * values[y * side + at];
                }
                turned[x * side + y] = (float) (mean / sum);
            }
        }
        return turned;
    }

    /** A field's left, right, top and bottom edge, each by itself, since what lies beside it differs from side to side. */
    static List<Pattern> edges(Area field) {
        return List.of(
                edge(field.left(), 1, field.top(), field.bottom(), true),
                edge(field.right(), -1, field.top(), field.bottom(), true),
                edge(field.top(), 1, field.left(), field.right(), false),
                edge(field.bottom(), -1, field.left(), field.right(), false));
    }

    private static Pattern edge(double at, int inwards, double from, double to, boolean upright) {
        List<Mark> marks = new ArrayList<>();
        for (double along = from + CORNER; along <= to - CORNER; along += ALONG) {
            for (double across = -OUTSIDE; across <= INSIDE; across += ACROSS) {
                // The logistic curve of the same deviation stands for the bell's sum.
                double ink = 1 / (1 + StrictMath.exp(-1.702 * across / SOFT_EDGE));
                double rise = 1.702 / SOFT_EDGE * ink * (1 - ink) * inwards;
                double place = at + inwards * across;
                marks.add(upright ? new Mark(place, along, ink, rise, 0) : new Mark(along, place, ink, 0, rise));
            }
        }
        return new Pattern(marks);
    }

    /** How well the scan shows the pattern at a place, moved by some micrometres: 1 wholly, 0 not at all, -1 as its negative. */
    double likeness(LightMap roots, Projective place, double movedX, double movedY, int every) {
        Seen seen = new Seen();
        for (int i = 0; i < marks.size(); i += every) {
            Mark mark = marks.get(i);
            double x = mark.x() + movedX;
            double y = mark.y() + movedY;
            seen.add(mark.ink(), roots.at(place.x(x, y), place.y(x, y)));
        }
        // Less than two thirds on the scan is no likeness.
        return seen.count * every * 1.5 < marks.size() ? 0 : seen.likeness();
    }

    /** Ink and light of the marks that lie on the scan, summed up. One thread. */
    static final class Seen {
        double count;
        private double sumInk;
        private double sumLight;
        private double sumInkInk;
        private double sumInkLight;
        private double sumLightLight;

        /** Adds a mark, if the light is a number. */
        void add(double ink, double light) {
            if (!Double.isNaN(light)) {
                count++;
                sumInk += ink;
                sumLight += light;
                sumInkInk += ink * ink;
                sumInkLight += ink * light;
                sumLightLight += light * light;
            }
        }

        double meanInk() {
            return sumInk / count;
        }

        double meanLight() {
            return sumLight / count;
        }

        /** Sum of squares of the ink, its mean taken out. */
        double inkSquares() {
            return sumInkInk - sumInk * sumInk / count;
        }

        /** Light that a share of ink adds, below 0 where ink is dark. */
        double slope() {
            return (sumInkLight - sumInk * sumLight / count) / inkSquares();
        }

        /** Correlation of clear film and light; 0 where either is all alike. */
        double likeness() {
            double lightSquares = sumLightLight - sumLight * sumLight / count;
            return inkSquares() > 0 && lightSquares > 0 ? -slope() * Math.sqrt(inkSquares() / lightSquares) : 0;
        }
    }
}
