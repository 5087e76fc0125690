package greyground.art.page;

/**
 * How one page's samples lie once unpacked: rows of interleaved samples, one byte each up to 8 bits, else two.
 *
 * @param width pixels across, as stored
 * @param height pixels down, as stored
 * @param channels samples of one pixel, extra ones included, 1 to 32
 * @param bytesPerSample 1 or 2
 * @param bigEndian which byte of a two-byte sample comes first
 */
public record Samples(int width, int height, int channels, int bytesPerSample, boolean bigEndian) {
    /** Bytes of one row. */
    public long bytesPerRow() {
        return (long) width * channels * bytesPerSample;
    }

    /** Rows of about a megabyte, at least 1, that are well read together. */
    public int bandRows() {
        return (int) Math.max(1, Math.min(height, (1 << 20) / bytesPerRow()));
    }

    /** Bytes of the whole picture. */
    public long bytes() {
        return bytesPerRow() * height;
    }

    /** The largest sample: 255 or 65 535. */
    public int most() {
        return bytesPerSample == 1 ? 255 : 65_535;
    }
}
