package greyground.film.compose;

import greyground.film.job.Outlines.Tear;
import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.List;

/**
 * A closed line that strays to either side like the edge of torn paper: noise along its length, of wavelengths 0.3 to 10 mm and strengths that fall as
 * the 0.8th power of their frequency (assumed). It strays along the side's own normal, and near a corner by no more than leaves the corner whole, so
 * that no islands come of it.
 */
final class TornEdge {
    private static final double STEP_MILLIMETRES = 0.1;
    private static final double LONGEST_MILLIMETRES = 10;
    private static final double SHORTEST_MILLIMETRES = 0.3;
    private static final double FALL = 0.8;

    /** Corners within some 11 degrees of straight belong to a curve (assumed). */
    private static final double ROUND = 10;

    private TornEdge() {}

    static List<Offset> of(List<Offset> points, Tear tear) {
        if (tear.millimetres() == 0) {
            return points;
        }
        int count = points.size();
        double length = 0;
        for (int i = 0; i < count; i++) {
            length += distance(points.get(i), points.get((i + 1) % count));
        }
        List<Offset> torn = new ArrayList<>();
        double along = 0;
        for (int i = 0; i < count; i++) {
            Offset from = points.get(i);
            Offset to = points.get((i + 1) % count);
            double side = distance(from, to);
            if (side == 0) {
                continue;
            }
            double before = room(points.get(Math.floorMod(i - 1, count)), from, to);
            double after = room(from, to, points.get((i + 2) % count));
            double x = (to.acrossMillimetres() - from.acrossMillimetres()) / side;
            double y = (to.downMillimetres() - from.downMillimetres()) / side;
            int steps = (int) Math.ceil(side / STEP_MILLIMETRES);
            for (int k = 0; k < steps; k++) {
                double at = side * k / steps;
                double most = Math.min(reach(at, side, before), reach(side - at, side, after));
                double wished = tear.millimetres() * noise((along + at) / length, length, tear.seed());
                double aside = Math.max(-most, Math.min(most, wished));
                torn.add(new Offset(
                        from.acrossMillimetres() + at * x - aside * y, from.downMillimetres() + at * y + aside * x));
            }
            along += side;
        }
        return torn;
    }

    /** How far a side may stray so far from a corner; where many short sides make a curve, half the curve's radius. */
    private static double reach(double fromCorner, double side, double room) {
        return room > ROUND ? Math.max(fromCorner, side / 2) * room / 2 : fromCorner * room;
    }

    private static double distance(Offset one, Offset other) {
        double x = other.acrossMillimetres() - one.acrossMillimetres();
        double y = other.downMillimetres() - one.downMillimetres();
        return Math.sqrt(x * x + y * y);
    }

    /** How far a side may stray a millimetre from a corner: to the line that halves it. */
    private static double room(Offset before, Offset corner, Offset after) {
        double x1 = before.acrossMillimetres() - corner.acrossMillimetres();
        double y1 = before.downMillimetres() - corner.downMillimetres();
        double x2 = after.acrossMillimetres() - corner.acrossMillimetres();
        double y2 = after.downMillimetres() - corner.downMillimetres();
        double cross = Math.abs(x1 * y2 - y1 * x2);
        double dot = x1 * x2 + y1 * y2;
        // tan(angle / 2) = sin / (1 + cos).
        double lengths = Math.sqrt((x1 * x1 + y1 * y1) * (x2 * x2 + y2 * y2));
        return cross / Math.max(1e-9 * lengths, lengths + dot);
    }

    /** From -1 to 1, the same at 0 and at 1. */
    private static double noise(double share, double length, int seed) {
        double sum = 0;
        double most = 0;
        int octave = 0;
        for (double wave = LONGEST_MILLIMETRES; wave >= SHORTEST_MILLIMETRES; wave /= 2) {
            int cells = Math.max(3, (int) Math.rint(length / wave));
            double strength = StrictMath.pow(wave / LONGEST_MILLIMETRES, FALL);
            double place = share * cells;
            int cell = (int) Math.floor(place);
            double within = place - cell;
            double smooth = within * within * (3 - 2 * within);
            double one = random(seed, octave, Math.floorMod(cell, cells));
            double other = random(seed, octave, Math.floorMod(cell + 1, cells));
            sum += strength * (one + smooth * (other - one));
            most += strength;
            octave++;
        }
        return sum / most;
    }

    /** From -1 to 1: the finishing steps of a 64-bit mix (Stafford 2011, variant 13; from memory). */
    private static double random(int seed, int octave, int cell) {
        long mixed = ((long) seed << 40) ^ ((long) octave << 32) ^ cell;
        mixed = (mixed ^ (mixed >>> 30)) * 0xBF58476D1CE4E5B9L + 0x9E3779B97F4A7C15L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        mixed ^= mixed >>> 31;
        return (mixed >> 11) / (double) (1L << 52);
    }
}
