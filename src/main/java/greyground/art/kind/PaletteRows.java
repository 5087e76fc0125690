package greyground.art.kind;

import greyground.art.page.SampleRows;
import java.io.IOException;

/** Looks a palette up: RGB and alpha of eight bits, for pictures whose colours go through a profile. */
final class PaletteRows implements SampleRows {
    private final SampleRows rows;
    private final int width;
    private final byte[] colours = new byte[4 * 256];
    private byte[] indices = new byte[0];

    /** {@code entries} are red, green, blue and alpha, 0 to 1; an index beyond them is black. */
    PaletteRows(SampleRows rows, int width, float[][] entries) {
        this.rows = rows;
        this.width = width;
        for (int i = 0; i < 256; i++) {
            for (int c = 0; c < 4; c++) {
                float part = i < entries.length ? entries[i][c] : c == 3 ? 1 : 0;
                colours[4 * i + c] = (byte) Math.round(255 * part);
            }
        }
    }

    @Override
    public void read(int firstRow, int rowCount, byte[] into) throws IOException {
        int pixels = Math.multiplyExact(rowCount, width);
        if (indices.length < pixels) {
            indices = new byte[pixels];
        }
        rows.read(firstRow, rowCount, indices);
        for (int i = 0; i < pixels; i++) {
            System.arraycopy(colours, 4 * (indices[i] & 0xFF), into, 4 * i, 4);
        }
    }

    @Override
    public void close() throws IOException {
        rows.close();
    }
}
