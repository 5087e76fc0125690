package greyground.raster;

import java.io.OutputStream;
import java.util.function.Supplier;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;

/** Writes all rows as one zlib stream (RFC 1950): the plain sequential form. */
public final class DeflatedRows {
    private DeflatedRows() {}

    /**
     * Makes the rows and deflates them into {@code out}, which stays open.
     *
     * @param rows in all, at least 1
     * @param bytesPerRow of every row
     * @param makers give bands of {@code rowCount * bytesPerRow} bytes
     * @param threads at least 1
     */
    public static void write(
            int rows,
            int bytesPerRow,
            Supplier<Bands.Maker<byte[]>> makers,
            int threads,
            OutputStream out,
            Progress progress)
            throws Exception {
        Deflater deflater = new Deflater(1);
        try {
            DeflaterOutputStream deflated = new DeflaterOutputStream(out, deflater, 1 << 16);
            int rowsPerBand = Math.max(1, (1 << 18) / bytesPerRow);
            Bands.inOrder(
                    rows,
                    rowsPerBand,
                    threads,
                    makers,
                    (first, count, band) -> deflated.write(band, 0, Math.multiplyExact(count, bytesPerRow)),
                    progress);
            deflated.finish();
        } finally {
            deflater.end();
        }
    }
}
