package greyground.scan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

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

    private final LightMap roots;
    private final double middleX;
    private final double middleY;
    private final double reach;

    /**
     * For a plate of a size.
     *
     * @param roots of the scan
     */
    Registering(LightMap roots, double widthMicrometres, double heightMicrometres) {
        this.roots = roots;
        this.middleX = widthMicrometres / 2;
        this.middleY = heightMicrometres / 2;
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
                Sums one = sums(place, pattern, whole ? 8 : 6);
                if (one.likeness > LEAST_LIKENESS) {
                    sums.add(one);
                }
            }
            double[] moved = solved(sums, whole ? 8 : 6);
            if (moved.length == 0) {
                return place;
            }
            place = place.after(move(moved));
            if (largest(moved) * reach < 0.5) {
                return place;
            }
        }
        return place;
    }

    private static double largest(double[] values) {
        return Arrays.stream(values).map(Math::abs).max().orElse(0);
    }

    /** How each pattern sits at a place. */
    List<Fit> fits(Projective place, List<Pattern> patterns) {
        return patterns.stream().map(pattern -> fit(place, pattern)).toList();
    }

    private Fit fit(Projective place, Pattern pattern) {
        Sums sums = sums(place, pattern, 6);
        // The shifts alone, in units of the reach.
        double xx = sums.normal[2][2];
        double yy = sums.normal[5][5];
        double moveX = xx > 0.05 * yy ? sums.normal[2][6] / xx * reach : 0;
        double moveY = yy > 0.05 * xx ? sums.normal[5][6] / yy * reach : 0;
        return new Fit(sums.likeness, moveX, moveY);
    }

    /** Solves for the move, twice: the second time without the patterns that disagree with it. */
    private static double[] solved(List<Sums> all, int unknowns) {
        double[] moved = solvedOnce(all, unknowns);
        if (moved.length == 0 || all.size() < 8) {
            return moved;
        }
        for (int again = 0; again < 3; again++) {
            double[] left = new double[all.size()];
            for (int i = 0; i < left.length; i++) {
                left[i] = all.get(i).disagreement(moved);
            }
            double[] sorted = left.clone();
            Arrays.sort(sorted);
            double usual = Math.max(1e-12, sorted[left.length / 2]);
            List<Sums> kept = new ArrayList<>();
            for (int i = 0; i < left.length; i++) {
                if (left[i] <= FAR * FAR * usual) {
                    kept.add(all.get(i));
                }
            }
            double[] next = solvedOnce(kept, unknowns);
            if (next.length == 0) {
                return moved;
            }
            moved = next;
        }
        return moved;
    }

    private static double[] solvedOnce(List<Sums> all, int unknowns) {
        double[][] normal = new double[unknowns][unknowns + 1];
        for (Sums one : all) {
            for (int i = 0; i < unknowns; i++) {
                for (int k = 0; k <= unknowns; k++) {
                    normal[i][k] += one.weight * one.normal[i][k];
                }
            }
        }
        LeastSquares problem = new LeastSquares(unknowns);
        problem.addNormal(normal);
        return problem.solved();
    }

    /** The small projective map of a move; lengths are shares of the reach, counted from the plate's middle. */
    private Projective move(double[] p) {
        Projective in =
                new Projective(new double[] {1 / reach, 0, -middleX / reach, 0, 1 / reach, -middleY / reach, 0, 0, 1});
        Projective out = new Projective(new double[] {reach, 0, middleX, 0, reach, middleY, 0, 0, 1});
        double g = p.length == 8 ? p[6] : 0;
        double h = p.length == 8 ? p[7] : 0;
        Projective small = new Projective(new double[] {1 + p[0], p[1], p[2], p[3], 1 + p[4], p[5], -g, -h, 1});
        return out.after(small).after(in);
    }

    private Sums sums(Projective place, Pattern pattern, int unknowns) {
        int size = pattern.size();
        double[] light = new double[size];
        double n = 0;
        double sumT = 0;
        double sumI = 0;
        double sumTT = 0;
        double sumTI = 0;
        double sumII = 0;
        for (int i = 0; i < size; i++) {
            light[i] = roots.at(place.x(pattern.x(i), pattern.y(i)), place.y(pattern.x(i), pattern.y(i)));
            if (!Double.isNaN(light[i])) {
                double t = pattern.ink(i);
                n++;
                sumT += t;
                sumI += light[i];
                sumTT += t * t;
                sumTI += t * light[i];
                sumII += light[i] * light[i];
            }
        }
        double tt = sumTT - sumT * sumT / n;
        double ti = sumTI - sumT * sumI / n;
        double ii = sumII - sumI * sumI / n;
        if (n < 12 || 2 * n < size || !(tt > 0) || !(ii > 0)) {
            return Sums.none(unknowns);
        }
        double ink = ti / tt;
        double meanT = sumT / n;
        double meanI = sumI / n;
        double[][] normal = new double[unknowns][unknowns + 1];
        double[] row = new double[unknowns];
        double[] means = new double[unknowns];
        double[] withT = new double[unknowns];
        double left = 0;
        for (int i = 0; i < size; i++) {
            if (Double.isNaN(light[i])) {
                continue;
            }
            slopes(pattern, i, ink, row);
            double t = pattern.ink(i) - meanT;
            double rest = light[i] - meanI - ink * t;
            left += rest * rest;
            for (int a = 0; a < unknowns; a++) {
                means[a] += row[a];
                withT[a] += row[a] * t;
                for (int b = 0; b < unknowns; b++) {
                    normal[a][b] += row[a] * row[b];
                }
                normal[a][unknowns] += row[a] * rest;
            }
        }
        // What paper and ink of their own take up is taken out.
        for (int a = 0; a < unknowns; a++) {
            for (int b = 0; b < unknowns; b++) {
                normal[a][b] -= means[a] * means[b] / n + withT[a] * withT[b] / tt;
            }
        }
        double variance = left / n + 1e-7;
        return new Sums(-ti / Math.sqrt(tt * ii), 1 / variance, normal);
    }

    /** How the light at a place changes with each number of the move. */
    private void slopes(Pattern pattern, int i, double ink, double[] row) {
        double u = (pattern.x(i) - middleX) / reach;
        double v = (pattern.y(i) - middleY) / reach;
        // The scan at a moved place is the pattern moved the other way.
        double byX = -ink * pattern.riseX(i) * reach;
        double byY = -ink * pattern.riseY(i) * reach;
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

    /** One pattern's part of the normal equations. */
    @SuppressWarnings("ArrayRecordComponent") // never compared
    private record Sums(double likeness, double weight, double[][] normal) {
        static Sums none(int unknowns) {
            return new Sums(0, 0, new double[unknowns][unknowns + 1]);
        }

        /** How much of what remains the move does not explain, as the square of a shift left over. */
        double disagreement(double[] move) {
            int unknowns = normal.length;
            double xx = normal[2][2];
            double yy = normal[5][5];
            double restX = normal[2][unknowns];
            double restY = normal[5][unknowns];
            for (int k = 0; k < unknowns; k++) {
                restX -= normal[2][k] * move[k];
                restY -= normal[5][k] * move[k];
            }
            double moveX = xx > 0.05 * yy ? restX / xx : 0;
            double moveY = yy > 0.05 * xx ? restY / yy : 0;
            return moveX * moveX + moveY * moveY;
        }
    }
}
