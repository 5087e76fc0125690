package greyground.art.page;

import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One page of a picture file, understood but not yet read.
 *
 * @param samples how its samples lie
 * @param meaning what they mean
 * @param profile the embedded colour profile's bytes, or null
 * @param orientation 1 to 8 as in TIFF 6.0 and EXIF: which corner row 0, column 0 belongs to
 * @param resolution the page's own resolution
 * @param bits bits of one stored sample
 * @param bandRows rows that are cheapest to read together, at least 1
 * @param anyOrder whether bands may be read in any order, each thread with a reader of its own
 * @param wholeBytes memory taken by a reader that can't go band by band; 0 for one that can
 * @param pixelsPerByteAtMost how many pixels a byte of the file can stand for, so that lies show early
 * @param rows opens a reader
 * @param remarks what the printmaker should hear of the file, such as that it holds more pictures
 */
@SuppressWarnings("ArrayRecordComponent") // Never compared, and never seen outside this package.
public record Page(
        Samples samples,
        Interpretation meaning,
        byte @Nullable [] profile,
        int orientation,
        PixelDensity resolution,
        int bits,
        int bandRows,
        boolean anyOrder,
        long wholeBytes,
        long pixelsPerByteAtMost,
        Opener rows,
        List<String> remarks) {

    /** Pixels that a byte of the common packings can stand for at the most (assumed, ample: deflate reaches 8256 bits). */
    public static final long PACKED = 1 << 14;
    /** Fax coding says a blank row in one bit, and lossless WebP a blank picture in a few. */
    public static final long UNBOUNDED = 1 << 22;

    /** A page of which there is nothing to remark. */
    public Page(
            Samples samples,
            Interpretation meaning,
            byte @Nullable [] profile,
            int orientation,
            PixelDensity resolution,
            int bits,
            int bandRows,
            boolean anyOrder,
            long wholeBytes,
            long pixelsPerByteAtMost,
            Opener rows) {
        this(
                samples,
                meaning,
                profile,
                orientation,
                resolution,
                bits,
                bandRows,
                anyOrder,
                wholeBytes,
                pixelsPerByteAtMost,
                rows,
                List.of());
    }

    /** Opens a reader of this page. */
    @FunctionalInterface
    public interface Opener {
        /** A reader for one thread. */
        SampleRows open() throws IOException;
    }

    /** Whether rows 1..n run down the finished picture's columns. */
    public boolean lying() {
        return orientation >= 5;
    }

    public int width() {
        return lying() ? samples.height() : samples.width();
    }

    public int height() {
        return lying() ? samples.width() : samples.height();
    }
}
