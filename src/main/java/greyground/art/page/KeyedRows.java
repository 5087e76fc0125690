package greyground.art.page;

import java.io.IOException;
import java.util.Arrays;

/** Adds an alpha channel to rows in which one exact colour stands for transparent. */
public final class KeyedRows implements SampleRows {
    private final SampleRows rows;
    private final int pixelBytes;
    private final int alphaBytes;
    private final int width;
    private final byte[] key;
    private byte[] plain = new byte[0];

    /** {@code samples} is the layout of {@code rows}, without alpha; {@code key} one pixel of it. */
    public KeyedRows(SampleRows rows, Samples samples, byte[] key) {
        this.rows = rows;
        this.pixelBytes = samples.channels() * samples.bytesPerSample();
        this.alphaBytes = samples.bytesPerSample();
        this.width = samples.width();
        this.key = key;
    }

    @Override
    public void read(int firstRow, int rowCount, byte[] into) throws IOException {
        int pixels = Math.multiplyExact(rowCount, width);
        if (plain.length < pixels * pixelBytes) {
            plain = new byte[pixels * pixelBytes];
        }
        rows.read(firstRow, rowCount, plain);
        int step = pixelBytes + alphaBytes;
        for (int i = 0; i < pixels; i++) {
            int from = i * pixelBytes;
            boolean transparent = Arrays.equals(plain, from, from + pixelBytes, key, 0, pixelBytes);
            System.arraycopy(plain, from, into, i * step, pixelBytes);
            Arrays.fill(into, i * step + pixelBytes, (i + 1) * step, (byte) (transparent ? 0 : 255));
        }
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
