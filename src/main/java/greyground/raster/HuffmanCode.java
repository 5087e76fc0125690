package greyground.raster;

import java.util.Arrays;

/**
 * A prefix code for one block of a deflate stream: short codes for frequent symbols, at most 15 bits.
 *
 * <p>Code lengths: Huffman D.A. 1952, "A method for the construction of minimum-redundancy codes", Proc. IRE 40, 1098-1101
 * (from memory, unverified). Codes from lengths, and bits sent from the code's top: RFC 1951, section 3.2.2.
 *
 * <p>Owned by one thread; {@link #build} overwrites the code in place and allocates nothing.
 */
final class HuffmanCode {
    private static final int LONGEST = 15;

    private final int symbols;
    private final byte[] lengths;
    private final int[] packed;
    private final long[] sorted;
    private final long[] weight;
    private final int[] parent;
    private final int[] firstCode = new int[LONGEST + 2];

    HuffmanCode(int symbols) {
        this.symbols = symbols;
        this.lengths = new byte[symbols];
        this.packed = new int[symbols];
        this.sorted = new long[symbols];
        this.weight = new long[2 * symbols];
        this.parent = new int[2 * symbols];
    }

    /**
     * Makes the code for these counts. {@code counts} may be flattened: rare symbols are made commoner until no code is
     * longer than 15 bits, which costs a hair of compression and happens only with wildly uneven counts.
     *
     * @param counts of each symbol, at least two of them above 0
     */
    void build(int[] counts) {
        while (longest(counts) > LONGEST) {
            for (int s = 0; s < symbols; s++) {
                counts[s] = counts[s] == 0 ? 0 : counts[s] >>> 1 | 1;
            }
        }
        assign();
    }

    /** Bits of a symbol's code, 0 where the symbol does not occur. */
    int length(int symbol) {
        return lengths[symbol];
    }

    /** For each symbol {@code code << 4 | length}, the code's bits in the order a deflate stream packs them. */
    int[] packed() {
        return packed;
    }

    /** Sets the lengths by merging the two lightest trees, from a sorted row and a queue of merged trees. */
    private int longest(int[] counts) {
        int leaves = gather(counts);
        sort(sorted, leaves);
        int end = merge(leaves);
        return setLengths(leaves, end);
    }

    private int gather(int[] counts) {
        int leaves = 0;
        for (int s = 0; s < symbols; s++) {
            lengths[s] = 0;
            if (counts[s] > 0) {
                sorted[leaves++] = (long) counts[s] << 16 | s;
            }
        }
        return leaves;
    }

    /** Gives every tree but the last a parent; returns how many trees there are, leaves included. */
    private int merge(int leaves) {
        for (int i = 0; i < leaves; i++) {
            weight[i] = sorted[i] >>> 16;
        }
        int leaf = 0;
        int tree = leaves;
        int next = leaves;
        while (next < 2 * leaves - 1) {
            long sum = 0;
            for (int pick = 0; pick < 2; pick++) {
                boolean takeLeaf = leaf < leaves && (tree == next || weight[leaf] <= weight[tree]);
                int taken = takeLeaf ? leaf++ : tree++;
                parent[taken] = next;
                sum += weight[taken];
            }
            weight[next++] = sum;
        }
        return next;
    }

    private int setLengths(int leaves, int trees) {
        // From here on a weight holds a depth: the root's is 0, and parents come after their children.
        weight[trees - 1] = 0;
        int deepest = 0;
        for (int i = trees - 2; i >= 0; i--) {
            weight[i] = weight[parent[i]] + 1;
            if (i < leaves) {
                int depth = (int) weight[i];
                lengths[(int) (sorted[i] & 0xFFFF)] = (byte) Math.min(depth, 127);
                deepest = Math.max(deepest, depth);
            }
        }
        return deepest;
    }

    /** By insertion: for some hundred numbers, a hundred times a film, faster than the platform's sort is compiled. */
    private static void sort(long[] values, int count) {
        for (int i = 1; i < count; i++) {
            long value = values[i];
            int j = i;
            for (; j > 0 && values[j - 1] > value; j--) {
                values[j] = values[j - 1];
            }
            values[j] = value;
        }
    }

    private void assign() {
        Arrays.fill(firstCode, 0);
        for (int s = 0; s < symbols; s++) {
            if (lengths[s] > 0) {
                firstCode[lengths[s] + 1]++;
            }
        }
        for (int bits = 1; bits <= LONGEST + 1; bits++) {
            firstCode[bits] = (firstCode[bits] + firstCode[bits - 1]) << 1;
        }
        for (int s = 0; s < symbols; s++) {
            int bits = lengths[s];
            packed[s] = bits == 0 ? 0 : Integer.reverse(firstCode[bits]++) >>> (32 - bits) << 4 | bits;
        }
    }
}
