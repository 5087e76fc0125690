package greyground.grain;

import java.util.function.IntUnaryOperator;

/** Turns the coverage at which each pixel should turn black into a strict order. */
final class BlackeningOrder {
    private static final int DIGIT = 12;

    private BlackeningOrder() {}

    /** As {@link #of(float[], IntUnaryOperator)}, with ties by chance. */
    static int[] of(float[] coverage, long seed) {
        return of(coverage, place -> (int) (GrainSites.hash(seed, place) >>> 52));
    }

    /**
     * Sorts by coverage to one part in 2^24, then by {@code tie}, then by place.
     *
     * @param coverage 0 to 1
     * @param tie for a place, 0 to 4095; it keeps equal pixels from blackening in rows
     * @return for each pixel its turn
     */
    static int[] of(float[] coverage, IntUnaryOperator tie) {
        int count = coverage.length;
        int[] places = new int[count];
        int[] other = new int[count];
        int[] key = new int[count];
        for (int i = 0; i < count; i++) {
            places[i] = i;
            key[i] = tie.applyAsInt(i);
        }
        pass(places, other, key, 0);
        int most = (1 << (2 * DIGIT)) - 1;
        for (int i = 0; i < count; i++) {
            key[i] = Math.max(0, Math.min(most, (int) (coverage[i] * (most + 1))));
        }
        pass(other, places, key, 0);
        pass(places, other, key, DIGIT);
        for (int turn = 0; turn < count; turn++) {
            places[other[turn]] = turn;
        }
        return places;
    }

    /** One stable pass of a radix sort over the places. */
    private static void pass(int[] from, int[] to, int[] key, int shift) {
        int mask = (1 << DIGIT) - 1;
        int[] next = new int[(1 << DIGIT) + 1];
        for (int place : from) {
            next[((key[place] >>> shift) & mask) + 1]++;
        }
        for (int d = 0; d < 1 << DIGIT; d++) {
            next[d + 1] += next[d];
        }
        for (int place : from) {
            to[next[(key[place] >>> shift) & mask]++] = place;
        }
    }
}
