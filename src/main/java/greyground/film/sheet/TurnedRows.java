package greyground.film.sheet;

import greyground.raster.Bands;
import java.io.IOException;

/** A film turned by a quarter, clockwise, pixel by pixel; it holds all of them. Immutable. */
public final class TurnedRows implements FilmRows {
    private final int width;
    private final int bitsPerSample;
    private final byte[][] rows;

    private TurnedRows(int width, int bitsPerSample, byte[][] rows) {
        this.width = width;
        this.bitsPerSample = bitsPerSample;
        this.rows = rows;
    }

    /** Reads a film once, from top to bottom. */
    public static TurnedRows of(FilmRows film) throws IOException {
        int width = film.height();
        int bits = film.bitsPerSample();
        byte[][] rows = new byte[film.width()][(int) (((long) width * bits + 7) / 8)];
        Bands.Maker<byte[]> maker = film.maker();
        int band = 64;
        for (int first = 0; first < film.height(); first += band) {
            int count = Math.min(band, film.height() - first);
            byte[] packed = maker.make(first, count);
            for (int y = 0; y < count; y++) {
                int start = y * film.bytesPerRow();
                int column = width - 1 - (first + y);
                if (bits == 1) {
                    turnBits(packed, start, film.width(), rows, column);
                } else {
                    int bytes = bits / 8;
                    for (int x = 0; x < film.width(); x++) {
                        System.arraycopy(packed, start + x * bytes, rows[x], column * bytes, bytes);
                    }
                }
            }
        }
        return new TurnedRows(width, bits, rows);
    }

    private static void turnBits(byte[] packed, int start, int pixels, byte[][] rows, int column) {
        int octet = column >> 3;
        int bit = 0x80 >> (column & 7);
        for (int x = 0; x < pixels; x++) {
            if ((packed[start + (x >> 3)] & 0x80 >> (x & 7)) != 0) {
                rows[x][octet] |= (byte) bit;
            }
        }
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return rows.length;
    }

    @Override
    public int bitsPerSample() {
        return bitsPerSample;
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        return (first, count) -> {
            byte[] band = new byte[count * bytesPerRow()];
            for (int y = 0; y < count; y++) {
                byte[] row = rows[first + y];
                System.arraycopy(row, 0, band, y * row.length, row.length);
            }
            return band;
        };
    }
}
