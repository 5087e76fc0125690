package greyground.film.compose;

import greyground.film.sheet.FilmRows;
import greyground.raster.Bands;
import greyground.raster.PackedRows;
import greyground.raster.PixelRect;
import java.util.Arrays;

/**
 * Art on its film, pixel by pixel and without enlarging: black wherever the middle of the film pixel lies on an art pixel no
 * lighter than a grey.
 *
 * @param width of the film
 * @param height of the film
 * @param content as it lies on the film, mirrored if that is
 * @param grey linear luminance, 0 to 65 534; -1 for nowhere
 */
record ArtPixels(int width, int height, FilmContent.Picture content, int grey) implements FilmRows {
    @Override
    public int bitsPerSample() {
        return 1;
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        return new RowMaker();
    }

    /** Owned by one thread: the row made last is kept, since an enlarged art row serves many. */
    private final class RowMaker implements Bands.Maker<byte[]> {
        private final short[] codes = new short[content.art().width()];
        private final byte[] row = new byte[bytesPerRow()];
        private int artRow = -1;

        @Override
        public byte[] make(int firstRow, int rowCount) {
            byte[] band = new byte[Math.multiplyExact(rowCount, bytesPerRow())];
            PixelRect image = content.image();
            for (int y = firstRow; y < firstRow + rowCount; y++) {
                if (y >= image.top() && y < image.bottom()) {
                    turnTo(content.placing().down().nearest(y - image.top()));
                    System.arraycopy(row, 0, band, (y - firstRow) * bytesPerRow(), row.length);
                }
            }
            return band;
        }

        private void turnTo(int wanted) {
            if (wanted == artRow) {
                return;
            }
            artRow = wanted;
            content.art().readRow(artRow, codes);
            Arrays.fill(row, (byte) 0);
            PixelRect image = content.image();
            int start = -1;
            for (int x = 0; x <= image.width(); x++) {
                boolean black =
                        x < image.width() && (codes[content.placing().across().nearest(x)] & 0xFFFF) <= grey;
                if (black && start < 0) {
                    start = x;
                } else if (!black && start >= 0) {
                    PackedRows.blacken(row, 0, image.left() + start, image.left() + x);
                    start = -1;
                }
            }
        }
    }
}
