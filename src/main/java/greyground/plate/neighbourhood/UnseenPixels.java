package greyground.plate.neighbourhood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;

/** Pixels of a film whose pattern a table does not know, and which blocks of film would teach it most. One thread. */
final class UnseenPixels implements NeighbourhoodTable.Unseen {
    /** Side of a block that the engine computes. */
    static final int BLOCK = 24;

    private int[] across = new int[64];
    private int[] down = new int[64];
    private long[] patterns = new long[64];
    private int size;

    @Override
    public void take(int x, int y, long pattern) {
        if (size == across.length) {
            across = Arrays.copyOf(across, 2 * size);
            down = Arrays.copyOf(down, 2 * size);
            patterns = Arrays.copyOf(patterns, 2 * size);
        }
        across[size] = x;
        down[size] = y;
        patterns[size++] = pattern;
    }

    /** Hands on every pixel, in the order it came in. */
    void each(NeighbourhoodTable.Unseen taker) {
        for (int i = 0; i < size; i++) {
            taker.take(across[i], down[i], patterns[i]);
        }
    }

    int size() {
        return size;
    }

    /** A block's corner. */
    record Block(int x, int y) {}

    /**
     * The blocks that teach most: one after another the one whose patterns stand for most pixels of those still unseen; of equals the
     * one farther up, then left.
     *
     * @param all in the order of the film
     */
    static List<Block> best(List<UnseenPixels> all, Neighbourhood disc, int most) {
        Map<Long, Integer> counts = new HashMap<>();
        Map<Long, Set<Long>> blocks = new HashMap<>();
        for (UnseenPixels part : all) {
            part.each((x, y, pattern) -> {
                long least = disc.turned(pattern, disc.leastTurn(pattern));
                counts.merge(least, 1, Integer::sum);
                long block = ((long) Math.floorDiv(y, BLOCK) << 20) + Math.floorDiv(x, BLOCK);
                blocks.computeIfAbsent(block, none -> new HashSet<>()).add(least);
            });
        }
        record Claim(long block, Set<Long> patterns, long pixels) {}
        PriorityQueue<Claim> claims = new PriorityQueue<>(
                Comparator.<Claim>comparingLong(claim -> -claim.pixels()).thenComparingLong(Claim::block));
        blocks.forEach((block, patterns) -> claims.add(new Claim(block, patterns, pixels(patterns, counts))));
        List<Block> best = new ArrayList<>();
        while (best.size() < most && !claims.isEmpty()) {
            Claim claim = claims.remove();
            long now = pixels(claim.patterns(), counts);
            if (now < claim.pixels()) {
                // Others have taught some of its patterns meanwhile; claims only ever fall.
                claims.add(new Claim(claim.block(), claim.patterns(), now));
            } else if (now == 0) {
                break;
            } else {
                int y = (int) ((claim.block() + (1 << 19)) >> 20);
                best.add(new Block((int) (claim.block() - ((long) y << 20)) * BLOCK, y * BLOCK));
                claim.patterns().forEach(counts::remove);
            }
        }
        return best;
    }

    private static long pixels(Set<Long> patterns, Map<Long, Integer> counts) {
        return patterns.stream()
                .mapToLong(pattern -> counts.getOrDefault(pattern, 0))
                .sum();
    }
}
