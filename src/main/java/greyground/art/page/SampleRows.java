package greyground.art.page;

import java.io.IOException;

/**
 * Reads bands of unpacked samples of one page. One thread owns a reader.
 *
 * <p>A reader that keeps its place may be asked only for bands from the top down, each row at most once; see
 * {@link Page#anyOrder()}.
 */
public interface SampleRows extends AutoCloseable {
    /** Fills the start of {@code into} with rows {@code firstRow} to {@code firstRow + rowCount - 1}. */
    void read(int firstRow, int rowCount, byte[] into) throws IOException;

    @Override
    default void close() throws IOException {
        // Most readers own nothing but arrays.
    }
}
