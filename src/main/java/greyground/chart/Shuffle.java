package greyground.chart;

import java.util.ArrayList;
import java.util.List;

/**
 * Deals the levels of a wedge to the cells of a plate. The cells, row by row, are cut into as many zones as there are repeats, and every
 * zone gets each level once, so the repeats lie far apart down the plate; of several deals the one is taken whose coverage
 * follows neither x nor y.
 */
final class Shuffle {
    /** Deals tried; more would hardly lower the best correlation (assumed). */
    private static final int DEALS = 24;

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private long state;

    private Shuffle(long seed) {
        this.state = seed * 0xD1342543DE82EF95L;
    }

    /**
     * Deals levels.
     *
     * @param cells row by row, at least as many as levels
     * @return a level for every cell, in the cells' order
     */
    static List<Integer> deal(List<Area> cells, List<Integer> levels, long seed) {
        Shuffle shuffle = new Shuffle(seed);
        List<Integer> best = List.of();
        double least = Double.POSITIVE_INFINITY;
        for (int deal = 0; deal < DEALS; deal++) {
            List<Integer> dealt = shuffle.one(cells.size(), levels);
            double follows =
                    Math.max(Math.abs(correlation(cells, dealt, true)), Math.abs(correlation(cells, dealt, false)));
            if (follows < least) {
                least = follows;
                best = dealt;
            }
        }
        return best;
    }

    /** A shuffled copy. */
    static List<Integer> shuffled(List<Integer> levels, long seed) {
        List<Integer> copy = new ArrayList<>(levels);
        new Shuffle(seed).shuffle(copy);
        return copy;
    }

    private List<Integer> one(int cells, List<Integer> levels) {
        int zones = cells / levels.size();
        List<Integer> dealt = new ArrayList<>(cells);
        for (int zone = 0; zone < zones; zone++) {
            int size = (int) ((long) (zone + 1) * cells / zones - (long) zone * cells / zones);
            List<Integer> hand = new ArrayList<>(levels);
            // Cells left over get some levels once more: never the same twice before all had their turn.
            while (hand.size() < size) {
                List<Integer> more = new ArrayList<>(levels);
                shuffle(more);
                hand.addAll(more.subList(0, Math.min(more.size(), size - hand.size())));
            }
            shuffle(hand);
            dealt.addAll(hand);
        }
        return dealt;
    }

    /** Fisher and Yates's shuffle (Durstenfeld 1964, from memory). */
    private void shuffle(List<Integer> cards) {
        for (int last = cards.size() - 1; last > 0; last--) {
            int other = (int) Long.remainderUnsigned(next(), last + 1L);
            int card = cards.get(last);
            cards.set(last, cards.get(other));
            cards.set(other, card);
        }
    }

    /** SplitMix64 (Steele, Lea and Flood 2014, from memory). */
    private long next() {
        state += GOLDEN;
        long mixed = (state ^ (state >>> 30)) * 0xBF58476D1CE4E5B9L;
        mixed = (mixed ^ (mixed >>> 27)) * 0x94D049BB133111EBL;
        return mixed ^ (mixed >>> 31);
    }

    /** Pearson's correlation of level and place. */
    static double correlation(List<Area> cells, List<Integer> levels, boolean across) {
        double meanPlace = 0;
        double meanLevel = 0;
        int count = cells.size();
        for (int i = 0; i < count; i++) {
            meanPlace += (double) place(cells.get(i), across) / count;
            meanLevel += (double) levels.get(i) / count;
        }
        double both = 0;
        double places = 0;
        double spread = 0;
        for (int i = 0; i < count; i++) {
            double x = place(cells.get(i), across) - meanPlace;
            double y = levels.get(i) - meanLevel;
            both += x * y;
            places += x * x;
            spread += y * y;
        }
        return places == 0 || spread == 0 ? 0 : both / Math.sqrt(places * spread);
    }

    private static int place(Area cell, boolean across) {
        return across ? cell.left() : cell.top();
    }
}
