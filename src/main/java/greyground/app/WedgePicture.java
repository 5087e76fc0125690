package greyground.app;

import greyground.film.FilmRows;
import greyground.raster.Bands;
import greyground.raster.Progress;
import java.util.Arrays;

/** A film of bits, small enough to be looked at whole. */
final class WedgePicture {
    private static final int MOST_PIXELS = 1600;
    private static final int BAND_ROWS = 64;

    private WedgePicture() {}

    /** Every pixel the mean light of those of the film that it stands for. */
    static LivePicture of(FilmRows film, Progress progress) throws Exception {
        int factor = Math.max(1, (int) Math.ceil(Math.max(film.width(), film.height()) / (double) MOST_PIXELS));
        int across = film.width() / factor;
        int down = film.height() / factor;
        int[] black = new int[across * down];
        Bands.Maker<byte[]> maker = film.maker();
        for (int first = 0; first < down * factor; first += BAND_ROWS) {
            int count = Math.min(BAND_ROWS, down * factor - first);
            byte[] band = maker.make(first, count);
            for (int row = 0; row < count; row++) {
                count(band, row * film.bytesPerRow(), factor, across, black, (first + row) / factor * across);
            }
            progress.done((double) (first + count) / (down * factor));
        }
        double area = (double) factor * factor;
        int[] pixels = Arrays.stream(black)
                .map(sum -> {
                    double light = 1 - sum / area;
                    int grey = (int) Math.round(
                            255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055));
                    return LivePicture.OPAQUE | grey << 16 | grey << 8 | grey;
                })
                .toArray();
        return new LivePicture(across, down, pixels);
    }

    private static void count(byte[] band, int start, int factor, int across, int[] black, int into) {
        for (int x = 0; x < across * factor; x++) {
            black[into + x / factor] += band[start + (x >> 3)] >> (7 - (x & 7)) & 1;
        }
    }
}
