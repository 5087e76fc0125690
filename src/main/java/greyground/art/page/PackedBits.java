package greyground.art.page;

/** Spreads samples of 1, 2 or 4 bits, first in the highest bits, to a byte each. */
public final class PackedBits {
    private PackedBits() {}

    /**
     * Spreads {@code count} samples.
     *
     * @param scaled whether the largest sample becomes 255; otherwise values stay as they are, as a palette needs them
     */
    public static void spread(byte[] packed, int from, int bits, byte[] into, int at, int count, boolean scaled) {
        int mask = (1 << bits) - 1;
        int factor = scaled ? 255 / mask : 1;
        int perByte = 8 / bits;
        for (int i = 0; i < count; i++) {
            int shift = 8 - bits * (i % perByte + 1);
            into[at + i] = (byte) ((packed[from + i / perByte] >> shift & mask) * factor);
        }
    }
}
