package greyground.plate.neighbourhood;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.stream.IntStream;

/** Pixels of a film whose pattern a table does not know, and which blocks of film would teach it most. Taken by one thread. */
final class UnseenPixels implements NeighbourhoodTable.Unseen {
    /** Side of a block that the engine computes. */
    static final int BLOCK = 24;

    /** What a pixel counts for that lies in black, where the pad may rest on it (found on mended drawings). */
    private static final int IN_BLACK = 4;

    /** Share of the pixels round it that are black then. */
    private static final double BLACK_SHARE = 0.7;

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

    /** Entry of each pixel, or {@code ~entry} of the known pattern most like its own. */
    int[] entries(NeighbourhoodTable table, NearestPatterns known) {
        long[] once = distinct(Arrays.copyOf(patterns, size));
        int[] found = new int[once.length];
        for (int i = 0; i < once.length; i++) {
            int entry = table.entryOf(once[i]);
            int nearest = entry < 0 ? known.to(once[i]) : -1;
            found[i] = nearest < 0 ? entry : ~nearest;
        }
        int[] entries = new int[size];
        Arrays.setAll(entries, i -> found[Arrays.binarySearch(once, patterns[i])]);
        return entries;
    }

    int size() {
        return size;
    }

    /** A block's corner. */
    record Block(int x, int y) {}

    /**
     * The blocks that teach most: one after another the one whose patterns stand for most pixels of those still unseen, those in black
     * counting {@value #IN_BLACK} times; of equals the one farther up, then left. Of a large plate there are millions of pixels, so they lie in sorted arrays rather than in maps.
     *
     * @param parts in the order of the film
     * @param most blocks
     * @param enough pixels that may stay unseen
     */
    static List<Block> best(List<UnseenPixels> parts, Neighbourhood disc, int most, long enough) {
        int[] from = new int[parts.size() + 1];
        for (int i = 0; i < parts.size(); i++) {
            from[i + 1] = from[i] + parts.get(i).size();
        }
        int pixels = from[parts.size()];
        long[] least = new long[pixels];
        long[] places = new long[pixels];
        IntStream.range(0, parts.size()).parallel().forEach(part -> {
            int[] next = {from[part]};
            parts.get(part).each((x, y, pattern) -> {
                least[next[0]] = disc.turned(pattern, disc.leastTurn(pattern));
                places[next[0]++] = ((long) Math.floorDiv(y, BLOCK) << 20) + Math.floorDiv(x, BLOCK);
            });
        });
        long[] patterns = distinct(least.clone());
        long[] blocks = distinct(places.clone());
        // Which pattern occurs in which block: the block's rank above, the pattern's below.
        IntStream.range(0, pixels)
                .parallel()
                .forEach(i -> places[i] =
                        (long) Arrays.binarySearch(blocks, places[i]) << 32 | Arrays.binarySearch(patterns, least[i]));
        int[] counts = new int[patterns.length];
        long all = 0;
        for (long place : places) {
            int weight = Long.bitCount(patterns[(int) place]) > BLACK_SHARE * disc.bits() ? IN_BLACK : 1;
            counts[(int) place] += weight;
            all += weight;
        }
        return best(blocks, distinct(places), counts, most, all - enough);
    }

    private static List<Block> best(long[] blocks, long[] pairs, int[] counts, int most, long wanted) {
        int[] from = new int[blocks.length + 1];
        for (long pair : pairs) {
            from[(int) (pair >> 32) + 1]++;
        }
        Arrays.parallelPrefix(from, Integer::sum);
        record Claim(int block, long pixels) {}
        PriorityQueue<Claim> claims = new PriorityQueue<>(
                Comparator.<Claim>comparingLong(claim -> -claim.pixels()).thenComparingInt(Claim::block));
        for (int block = 0; block < blocks.length; block++) {
            claims.add(new Claim(block, pixels(pairs, from, block, counts)));
        }
        List<Block> best = new ArrayList<>();
        long seen = 0;
        while (best.size() < most && seen < wanted && !claims.isEmpty()) {
            Claim claim = claims.remove();
            long now = pixels(pairs, from, claim.block(), counts);
            if (now < claim.pixels()) {
                // Others have taught some of its patterns meanwhile; claims only ever fall.
                claims.add(new Claim(claim.block(), now));
            } else if (now == 0) {
                break;
            } else {
                seen += now;
                long place = blocks[claim.block()];
                int y = (int) ((place + (1 << 19)) >> 20);
                best.add(new Block((int) (place - ((long) y << 20)) * BLOCK, y * BLOCK));
                for (int i = from[claim.block()]; i < from[claim.block() + 1]; i++) {
                    counts[(int) pairs[i]] = 0;
                }
            }
        }
        return best;
    }

    private static long pixels(long[] pairs, int[] from, int block, int[] counts) {
        long sum = 0;
        for (int i = from[block]; i < from[block + 1]; i++) {
            sum += counts[(int) pairs[i]];
        }
        return sum;
    }

    /** Sorts numbers and keeps one of each. */
    private static long[] distinct(long[] numbers) {
        Arrays.parallelSort(numbers);
        int kept = 0;
        for (int i = 0; i < numbers.length; i++) {
            if (i == 0 || numbers[i] != numbers[i - 1]) {
                numbers[kept++] = numbers[i];
            }
        }
        return Arrays.copyOf(numbers, kept);
    }
}
