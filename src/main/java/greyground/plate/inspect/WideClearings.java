package greyground.plate.inspect;

import greyground.plate.edge.Distance;
import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import greyground.raster.BitPlane;
import greyground.raster.PixelRect;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which squares of the plate hold no living land at all, remembered for the whole plate so that clearings much wider than the
 * critical width can be measured at the end, within a square's side. At most eight million squares, of 8 film pixels or more.
 * Past the plate's edges everything counts as land, since there the copper ends. One thread.
 */
final class WideClearings {
    private static final int LEAST_SIDE = 8;
    private static final double MOST_SQUARES = 8e6;

    private final int side;
    private final int across;
    private final int down;
    private final boolean[] held;

    WideClearings(PixelRect plate) {
        side = Math.max(LEAST_SIDE, (int) Math.ceil(Math.sqrt((double) plate.width() * plate.height() / MOST_SQUARES)));
        across = (plate.width() + side - 1) / side + 2;
        down = (plate.height() + side - 1) / side + 2;
        held = new boolean[across * down];
        for (int x = 0; x < across; x++) {
            held[x] = true;
            held[(down - 1) * across + x] = true;
        }
        for (int y = 0; y < down; y++) {
            held[y * across] = true;
            held[y * across + across - 1] = true;
        }
    }

    /** Takes the lands of some rows of the plate; {@code left} is the plate's first column in the plane. */
    void take(BitPlane lands, int left, int plateWidth, int firstPlateRow) {
        for (int y = 0; y < lands.rows(); y++) {
            int row = ((firstPlateRow + y) / side + 1) * across + 1;
            for (int square = 0, x = 0; x < plateWidth; square++, x += side) {
                if (!held[row + square]) {
                    held[row + square] = lands.count(y, left + x, left + Math.min(plateWidth, x + side)) > 0;
                }
            }
        }
    }

    /** A disc in film pixels of the plate. */
    record Disc(int x, int y, double radius) {}

    /** Finds the widest discs of clearings; computed when first asked. */
    Finder finder() {
        return new Finder(Distance.squaredPixels(held, true, new Grid(across, down, 1, Rim.BOUNDED)));
    }

    /** Measures clearings one after the other. */
    final class Finder {
        private final float[] squared;
        private final int[] seen;
        private int turn;

        private Finder(float[] squared) {
            this.squared = squared;
            this.seen = new int[squared.length];
        }

        /**
         * The widest disc of the clearing about a place that is at least {@code radius} from land; of several, that
         * nearest to their middle, so that a long clearing is met half way.
         */
        Disc widest(int plateX, int plateY, double radius) {
            turn++;
            double least = Math.max(1, radius / side - 2);
            int start = (plateY / side + 1) * across + plateX / side + 1;
            int best = start;
            List<Integer> widest = new ArrayList<>();
            ArrayDeque<Integer> front = new ArrayDeque<>();
            seen[start] = turn;
            front.add(start);
            while (!front.isEmpty()) {
                int at = front.remove();
                if (squared[at] > squared[best]) {
                    widest.clear();
                    best = at;
                }
                if (squared[at] == squared[best]) {
                    widest.add(at);
                }
                for (int next : new int[] {at - 1, at + 1, at - across, at + across}) {
                    if (seen[next] != turn && squared[next] >= least * least) {
                        seen[next] = turn;
                        front.add(next);
                    }
                }
            }
            best = middle(widest);
            int x = best % across - 1;
            int y = best / across - 1;
            double found = (Math.sqrt(squared[best]) - 0.5) * side;
            return new Disc(x * side + side / 2, y * side + side / 2, Math.max(radius, found));
        }

        private int middle(List<Integer> squares) {
            double x = squares.stream().mapToInt(at -> at % across).average().orElseThrow();
            double y = squares.stream().mapToInt(at -> at / across).average().orElseThrow();
            return squares.stream()
                    .min(Comparator.comparingDouble((Integer at) -> StrictMath.hypot(at % across - x, at / across - y))
                            .thenComparing(Comparator.naturalOrder()))
                    .orElseThrow();
        }
    }
}
