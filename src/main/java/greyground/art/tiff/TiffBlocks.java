package greyground.art.tiff;

import greyground.art.page.ArtBytes;
import java.io.IOException;

/**
 * How one TIFF page's samples are cut into strips or tiles and packed.
 *
 * @param width pixels across the page
 * @param height pixels down the page
 * @param blockWidth pixels across a strip (the page's width) or tile
 * @param blockHeight pixels down a strip or tile
 * @param samplesPerPixel samples of a pixel, extra ones included
 * @param bits bits of a sample
 * @param separate whether each sample has blocks of its own
 * @param compression TIFF tag 259
 * @param predicted whether rows hold differences (TIFF 6.0 section 14)
 * @param bitsReversed whether bits in bytes run backward (tag 266)
 * @param bigEndian byte order of two-byte samples
 * @param photometric TIFF tag 262
 * @param offsets where each block starts
 * @param counts bytes of each block
 * @param jpegTables tables that JPEG blocks share; may be empty
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
        byte[] jpegTables) {

    static final int NONE = 1;
    static final int LZW = 5;
    static final int OLD_JPEG = 6;
    static final int JPEG = 7;
    static final int DEFLATE = 8;
    static final int PACK_BITS = 32_773;
    static final int LZMA = 34_925;
    static final int ZSTANDARD = 50_000;
    static final int WEBP = 50_001;

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

    /** Whether each is a picture of its own, unpacked as one. */
    boolean pictures() {
        return compression == JPEG || compression == WEBP;
    }

    /** Whether {@link TiffRows} unpacks them. */
    boolean unpacked(ArtBytes file) throws IOException {
        return switch (compression) {
            case NONE, JPEG, DEFLATE, PACK_BITS, LZMA, ZSTANDARD, WEBP -> true;
            case LZW -> !oldLzw(file);
            default -> false;
        };
    }

    /** Writers before TIFF 6.0 put LZW codes' bits the other way round, so that the first, 256, starts with these bytes. */
    private boolean oldLzw(ArtBytes file) throws IOException {
        byte[] start = new byte[2];
        return file.read(offsets[0], start, 0, 2) == 2 && start[0] == 0 && (start[1] & 1) == 1;
    }
}
