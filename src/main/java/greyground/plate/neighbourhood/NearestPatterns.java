package greyground.plate.neighbourhood;

import java.util.Arrays;

/**
 * Patterns whose print is known, asked for those most like one that is not: of the patterns with the same 21 pixels in the middle, the ones
 * that differ in the fewest and farthest of the others.
 */
final class NearestPatterns {
    /** Of more patterns with one middle every second, third ... is compared. */
    private static final int MOST_COMPARED = 500;

    private final Neighbourhood disc;
    /** Sorted by their middles, and where each middle begins. */
    private final long[] patterns;

    private final int[] entries;
    private final int[] middles;

    /**
     * Takes patterns.
     *
     * @param patterns that are known
     * @param entries of the patterns, in the same order
     */
    NearestPatterns(Neighbourhood disc, long[] patterns, int[] entries) {
        this.disc = disc;
        record Known(int middle, long pattern, int entry) {}
        Known[] known = new Known[patterns.length];
        for (int i = 0; i < known.length; i++) {
            known[i] = new Known(disc.innerOf(patterns[i]), patterns[i], entries[i]);
        }
        Arrays.parallelSort(
                known,
                (a, b) -> a.middle() != b.middle()
                        ? Integer.compare(a.middle(), b.middle())
                        : Long.compare(a.pattern(), b.pattern()));
        this.patterns = Arrays.stream(known).mapToLong(Known::pattern).toArray();
        this.entries = Arrays.stream(known).mapToInt(Known::entry).toArray();
        this.middles = Arrays.stream(known).mapToInt(Known::middle).toArray();
    }

    /** Entry of the pattern most like one, of equals the least; -1 if none has its middle. */
    int to(long pattern) {
        int middle = disc.innerOf(pattern);
        int first = place(middle);
        int end = place(middle + 1);
        int step = Math.max(1, (end - first) / MOST_COMPARED);
        int nearest = -1;
        int least = Integer.MAX_VALUE;
        for (int at = first; at < end; at += step) {
            int apart = disc.apart(pattern, patterns[at]);
            if (apart < least) {
                least = apart;
                nearest = entries[at];
            }
        }
        return nearest;
    }

    /** Where the patterns begin whose middle is this or a later one. */
    private int place(int middle) {
        int low = 0;
        int high = middles.length;
        while (low < high) {
            int between = (low + high) >>> 1;
            if (middles[between] < middle) {
                low = between + 1;
            } else {
                high = between;
            }
        }
        return low;
    }
}
