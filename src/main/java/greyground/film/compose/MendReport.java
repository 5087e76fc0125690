package greyground.film.compose;

import greyground.film.sheet.Sheet;
import greyground.raster.Bands;
import greyground.raster.PixelRect;
import greyground.raster.Progress;
import greyground.raster.Regions;
import java.io.IOException;

/**
 * What mending changed on the plate.
 *
 * @param solidSquareMillimetres film that was clear between grains and is now black
 * @param grainSquareMillimetres of the art's darkest tone that kept its grain, being too wide
 * @param wideBlacks separate places of that kind
 */
public record MendReport(double solidSquareMillimetres, double grainSquareMillimetres, long wideBlacks) {
    private static final int BAND_ROWS = 512;

    /** Goes once through the whole film. */
    public static MendReport of(Mend mend, int threads, Progress progress) throws IOException {
        Sheet sheet = mend.sheet();
        Count count = new Count(sheet.plate());
        Bands.inOrder(sheet.heightPixels(), BAND_ROWS, threads, mend::parts, count, progress);
        count.wide.end();
        double pixel = sheet.pixels().acrossMillimetres(1) * sheet.pixels().downMillimetres(1);
        return new MendReport(count.solid * pixel, count.grain * pixel, count.wideBlacks);
    }

    /** Counts pixels of the plate, part by part, on one thread. */
    private static final class Count implements Bands.Taker<Mend.Part> {
        private final PixelRect plate;
        private final Regions wide = new Regions((pixels, weight, best, x, y) -> wideBlacks(pixels));
        private long solid;
        private long grain;
        private long wideBlacks;

        private Count(PixelRect plate) {
            this.plate = plate;
        }

        private void wideBlacks(long pixels) {
            wideBlacks += pixels > 0 ? 1 : 0;
        }

        @Override
        public void take(int firstRow, int rowCount, Mend.Part part) {
            int left = Math.max(0, plate.left() - part.firstColumn());
            int right = Math.min(part.madeSolid().width(), plate.right() - part.firstColumn());
            for (int y = 0; y < rowCount; y++) {
                int row = firstRow + y;
                if (row >= plate.top() && row < plate.bottom()) {
                    solid += part.madeSolid().count(y, left, right);
                    grain += part.leftToGrain().count(y, left, right);
                    wide.add(part.leftToGrain(), y, left, right, 0, row);
                    wide.endRow();
                }
            }
        }
    }
}
