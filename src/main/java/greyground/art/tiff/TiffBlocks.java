package greyground.art.tiff;

/**
 * How one TIFF page's samples are cut into strips or tiles and packed.
 *
 * @param width pixels across the page
 * @param height pixels down the page
 * @param blockWidth pixels across a strip (the page's width) or tile
 * @param blockHeight pixels down a strip or tile
 * @param samplesPerPixel samples of a pixel, extra ones included
 * @param bits bits of a sample: 1, 2, 4, 8 or 16
 * @param separate whether each sample has blocks of its own
 * @param compression TIFF tag 259
 * @param predicted whether rows hold differences (TIFF 6.0 section 14)
 * @param bitsReversed whether bits in bytes run backward (tag 266)
 * @param bigEndian byte order of two-byte samples
 * @param photometric TIFF tag 262
 * @param offsets where each block starts
 * @param counts bytes of each block
 * @param jpegTables tables that JPEG blocks share; may be empty
 * @param directory the page's place among the file's directories
 */
@SuppressWarnings("ArrayRecordComponent") // Never compared, and never seen outside this package.
record TiffBlocks(
        int width,
        int height,
        int blockWidth,
        int blockHeight,
        int samplesPerPixel,
        int bits,
        boolean separate,
        int compression,
        boolean predicted,
        boolean bitsReversed,
        boolean bigEndian,
        int photometric,
        long[] offsets,
        long[] counts,
        byte[] jpegTables,
        int directory) {

    static final int NONE = 1;
    static final int LZW = 5;
    static final int JPEG = 7;
    static final int DEFLATE = 8;
    static final int OLD_DEFLATE = 32_946;
    static final int PACK_BITS = 32_773;

    int across() {
        return (int) (((long) width + blockWidth - 1) / blockWidth);
    }

    int down() {
        return (int) (((long) height + blockHeight - 1) / blockHeight);
    }

    int planes() {
        return separate ? samplesPerPixel : 1;
    }

    /** Samples of one pixel within a block. */
    int blockSamples() {
        return separate ? 1 : samplesPerPixel;
    }

    /** Bytes of one packed row of a block. */
    long packedRowBytes() {
        return ((long) blockWidth * blockSamples() * bits + 7) / 8;
    }

    int bytesPerSample() {
        return bits > 8 ? 2 : 1;
    }

    /** TIFF 6.0's modified Huffman, group 3 and group 4. */
    boolean fax() {
        return compression >= 2 && compression <= 4;
    }
}
