package greyground.art.burnish;

import greyground.quantity.Offset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Points joined straight, and how far from them a place is. */
public record Polyline(List<Offset> points) {
    public Polyline {
        points = List.copyOf(points);
    }

    double[] down(double reach) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Offset point : points) {
            least = Math.min(least, point.downMillimetres());
            most = Math.max(most, point.downMillimetres());
        }
        return new double[] {least - reach, most + reach};
    }

    double[] across(double down, double reach) {
        double[] span = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        for (int i = 0; i < pieces(); i++) {
            double[] piece = piece(i, down, reach);
            span[0] = Math.min(span[0], piece[0]);
            span[1] = Math.max(span[1], piece[1]);
        }
        return span;
    }

    private int pieces() {
        return Math.max(1, points.size() - 1);
    }

    private Offset end(int piece) {
        return points.get(Math.min(piece + 1, points.size() - 1));
    }

    /** Where a piece may be within reach in a row: what lies so near it up or down, and as much on either side. */
    private double[] piece(int i, double down, double reach) {
        Offset from = points.get(i);
        Offset to = end(i);
        double top = Math.min(from.downMillimetres(), to.downMillimetres());
        double bottom = Math.max(from.downMillimetres(), to.downMillimetres());
        if (down < top - reach || down > bottom + reach) {
            return new double[] {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
        }
        double one = acrossAt(from, to, Math.max(top, down - reach));
        double other = acrossAt(from, to, Math.min(bottom, down + reach));
        boolean level = top == bottom;
        double left = level ? Math.min(from.acrossMillimetres(), to.acrossMillimetres()) : Math.min(one, other);
        double right = level ? Math.max(from.acrossMillimetres(), to.acrossMillimetres()) : Math.max(one, other);
        return new double[] {left - reach, right + reach};
    }

    private static double acrossAt(Offset from, Offset to, double down) {
        double rise = to.downMillimetres() - from.downMillimetres();
        double share = rise == 0 ? 0 : Math.max(0, Math.min(1, (down - from.downMillimetres()) / rise));
        return from.acrossMillimetres() + share * (to.acrossMillimetres() - from.acrossMillimetres());
    }

    /** Squares of the distance to the line, endless where that is beyond reach. */
    public void squares(LocalTouch.Pixels row, double reach, double[] into) {
        Arrays.fill(into, 0, row.count(), Double.POSITIVE_INFINITY);
        if (points.isEmpty()) {
            return;
        }
        for (int i = 0; i < pieces(); i++) {
            double[] span = piece(i, row.downMillimetres(), reach);
            if (span[0] > span[1]) {
                continue;
            }
            int first =
                    (int) Math.max(0, Math.ceil((span[0] - row.acrossMillimetres()) / row.pitchMillimetres() - 1e-9));
            int last = (int) Math.min(
                    row.count() - 1, Math.floor((span[1] - row.acrossMillimetres()) / row.pitchMillimetres() + 1e-9));
            squares(points.get(i), end(i), row, first, last, into);
        }
    }

    private static void squares(Offset from, Offset to, LocalTouch.Pixels row, int first, int last, double[] into) {
        double across = to.acrossMillimetres() - from.acrossMillimetres();
        double down = to.downMillimetres() - from.downMillimetres();
        double square = across * across + down * down;
        double y = row.downMillimetres() - from.downMillimetres();
        for (int i = first; i <= last; i++) {
            double x = row.acrossMillimetres() + i * row.pitchMillimetres() - from.acrossMillimetres();
            double share = square == 0 ? 0 : Math.max(0, Math.min(1, (x * across + y * down) / square));
            double besideX = x - share * across;
            double besideY = y - share * down;
            into[i] = Math.min(into[i], besideX * besideX + besideY * besideY);
        }
    }

    /** Places beside the line at a distance, evenly over its pieces, on either side in turn. */
    List<Offset> beside(double distance, int count) {
        List<Offset> beside = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Offset from = points.get((int) ((long) i * pieces() / count));
            Offset to = end((int) ((long) i * pieces() / count));
            double across = to.acrossMillimetres() - from.acrossMillimetres();
            double down = to.downMillimetres() - from.downMillimetres();
            double length = Math.sqrt(across * across + down * down);
            double side = (i % 2 == 0 ? distance : -distance) / Math.max(length, 1e-9);
            beside.add(new Offset(
                    (from.acrossMillimetres() + to.acrossMillimetres()) / 2 - side * down,
                    (from.downMillimetres() + to.downMillimetres()) / 2 + side * across));
        }
        return beside;
    }
}
