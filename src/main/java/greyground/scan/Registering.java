package greyground.scan;

import greyground.chart.Area;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Lays patterns of known places onto a scan and moves the plate's map until they agree: Gauss and Newton's method on the squares of what
 * remains once each pattern has been given its own paper and ink, with slopes taken from the pattern (the inverse compositional way of
 * Baker and Matthews 2004, Lucas-Kanade 20 Years On; from memory). Patterns that the scan doesn't show count little, ones seen as
 * negatives not at all.
 */
final class Registering {
    /** Patterns that are further from agreeing than this many times the usual, in moves, are left out (assumed). */
    private static final double FAR = 4;

    private static final double LEAST_LIKENESS = 0.3;
    private static final double SINGULAR = 1e-12;

    private final LightMap roots;
    private final double middleX;
    private final double middleY;
    private final double reach;

    /** For a plate and the roots of its scan. */
    Registering(LightMap roots, Area plate) {
        this.roots = roots;
        this.middleX = plate.middleX();
        this.middleY = plate.middleY();
        this.reach = Math.max(middleX, middleY);
    }

    /** How one pattern sits: how alike, and how far it would move by itself, both ways where its edges tell, in micrometres. */
    record Fit(double likeness, double moveX, double moveY) {}

    /** Moves the map. */
    Projective fitted(Projective start, List<Pattern> patterns, boolean whole, int rounds) {
        Projective place = start;
        for (int round = 0; round < rounds; round++) {
            List<Sums> sums = new ArrayList<>();
            for (Pattern pattern : patterns) {
                sums(place, pattern, whole ? 8 : 6)
                        .filter(one -> one.likeness > LEAST_LIKENESS)
                        .ifPresent(sums::add);
            }
            Optional<RealVector> moved = solved(sums);
            if (moved.isEmpty()) {
                return place;
            }
            place = place.after(move(moved.get()));
            if (moved.get().getLInfNorm() * reach < 0.5) {
                return place;
            }
        }
        return place;
    }

    /** How each pattern sits at a place. */
    List<Fit> fits(Projective place, List<Pattern> patterns) {
        return patterns.stream()
                .map(pattern -> sums(place, pattern, 6)
                        .map(one -> one.left(new ArrayRealVector(6), reach))
                        .orElse(new Fit(0, 0, 0)))
                .toList();
    }

    /** Solves for the move, again and again without the patterns that disagree with it. */
    private static Optional<RealVector> solved(List<Sums> all) {
        Optional<RealVector> moved = solvedOnce(all);
        for (int again = 0; again < 3 && moved.isPresent() && all.size() >= 8; again++) {
            RealVector move = moved.get();
            double[] left = all.stream()
                    .map(one -> one.left(move, 1))
                    .mapToDouble(fit -> fit.moveX() * fit.moveX() + fit.moveY() * fit.moveY())
                    .toArray();
            double usual = Math.max(1e-12, Arrays.stream(left).sorted().toArray()[left.length / 2]);
            List<Sums> kept = new ArrayList<>();
            for (int i = 0; i < left.length; i++) {
                if (left[i] <= FAR * FAR * usual) {
                    kept.add(all.get(i));
                }
            }
            Optional<RealVector> next = solvedOnce(kept);
            if (next.isEmpty()) {
                return moved;
            }
            moved = next;
        }
        return moved;
    }

    private static Optional<RealVector> solvedOnce(List<Sums> all) {
        if (all.isEmpty()) {
            return Optional.empty();
        }
        int unknowns = all.get(0).right.getDimension();
        RealMatrix normal = new Array2DRowRealMatrix(unknowns, unknowns);
        RealVector right = new ArrayRealVector(unknowns);
        for (Sums one : all) {
            normal = normal.add(one.normal.scalarMultiply(one.weight));
            right = right.add(one.right.mapMultiply(one.weight));
        }
        double largest = 0;
        for (int i = 0; i < unknowns; i++) {
            largest = Math.max(largest, Math.abs(normal.getEntry(i, i)));
        }
        DecompositionSolver solver = new LUDecomposition(normal, SINGULAR * largest).getSolver();
        return solver.isNonSingular() ? Optional.of(solver.solve(right)) : Optional.empty();
    }

    /** The small projective map of a move; lengths are shares of the reach, counted from the plate's middle. */
    private Projective move(RealVector move) {
        double[] p = Arrays.copyOf(move.toArray(), 8);
        Projective in = Projective.scaled(1 / reach, -middleX / reach, -middleY / reach);
        Projective out = Projective.scaled(reach, middleX, middleY);
        return out.after(new Projective(1 + p[0], p[1], p[2], p[3], 1 + p[4], p[5], -p[6], -p[7]))
                .after(in);
    }

    /** One pattern's part of the normal equations; none where too little of it lies on the scan, or all of it is alike. */
    private Optional<Sums> sums(Projective place, Pattern pattern, int unknowns) {
        int size = pattern.marks().size();
        double[] light = new double[size];
        Pattern.Seen seen = new Pattern.Seen();
        for (int i = 0; i < size; i++) {
            Pattern.Mark mark = pattern.marks().get(i);
            light[i] = roots.at(place.x(mark.x(), mark.y()), place.y(mark.x(), mark.y()));
            seen.add(mark.ink(), light[i]);
        }
        double n = seen.count;
        double likeness = seen.likeness();
        if (n < 12 || 2 * n < size || likeness == 0) {
            return Optional.empty();
        }
        double ink = seen.slope();
        double[][] normal = new double[unknowns][unknowns];
        double[] right = new double[unknowns];
        double[] row = new double[unknowns];
        double[] means = new double[unknowns];
        double[] withInk = new double[unknowns];
        double left = 0;
        for (int i = 0; i < size; i++) {
            if (Double.isNaN(light[i])) {
                continue;
            }
            Pattern.Mark mark = pattern.marks().get(i);
            slopes(mark, ink, row);
            double t = mark.ink() - seen.meanInk();
            double rest = light[i] - seen.meanLight() - ink * t;
            left += rest * rest;
            for (int a = 0; a < unknowns; a++) {
                means[a] += row[a];
                withInk[a] += row[a] * t;
                for (int b = 0; b < unknowns; b++) {
                    normal[a][b] += row[a] * row[b];
                }
                right[a] += row[a] * rest;
            }
        }
        // What paper and ink of their own take up is taken out.
        for (int a = 0; a < unknowns; a++) {
            for (int b = 0; b < unknowns; b++) {
                normal[a][b] -= means[a] * means[b] / n + withInk[a] * withInk[b] / seen.inkSquares();
            }
        }
        double variance = left / n + 1e-7;
        return Optional.of(new Sums(
                likeness, 1 / variance, new Array2DRowRealMatrix(normal, false), new ArrayRealVector(right, false)));
    }

    /** How the light at a place changes with each number of the move. */
    private void slopes(Pattern.Mark mark, double ink, double[] row) {
        double u = (mark.x() - middleX) / reach;
        double v = (mark.y() - middleY) / reach;
        // The scan at a moved place is the pattern moved the other way.
        double byX = -ink * mark.riseX() * reach;
        double byY = -ink * mark.riseY() * reach;
        row[0] = byX * u;
        row[1] = byX * v;
        row[2] = byX;
        row[3] = byY * u;
        row[4] = byY * v;
        row[5] = byY;
        if (row.length == 8) {
            row[6] = u * (byX * u + byY * v);
            row[7] = v * (byX * u + byY * v);
        }
    }

    private record Sums(double likeness, double weight, RealMatrix normal, RealVector right) {
        /** The shifts alone that are left over after a move; a reach of 1 leaves them in its units. */
        Fit left(RealVector move, double reach) {
            RealVector rest = right.subtract(normal.operate(move));
            double xx = normal.getEntry(2, 2);
            double yy = normal.getEntry(5, 5);
            return new Fit(
                    likeness,
                    xx > 0.05 * yy ? rest.getEntry(2) / xx * reach : 0,
                    yy > 0.05 * xx ? rest.getEntry(5) / yy * reach : 0);
        }
    }
}
