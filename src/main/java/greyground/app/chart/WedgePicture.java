package greyground.app.chart;

import greyground.app.live.LiveGreys;
import greyground.app.sight.LivePicture;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.SheetShares;
import greyground.raster.Progress;
import greyground.tone.ToneCurve;
import java.io.IOException;

/** A film of bits, small enough to be looked at whole. */
final class WedgePicture {
    /** Along the longer side: sharper than most windows show it (assumed). */
    private static final int MOST_PIXELS = 1600;

    private WedgePicture() {}

    /** Every pixel the mean light of those of the film that it stands for. */
    static LivePicture of(FilmRows film, Progress progress) throws IOException {
        int factor = Math.max(1, (int) Math.ceil(Math.max(film.width(), film.height()) / (double) MOST_PIXELS));
        int across = film.width() / factor;
        int down = film.height() / factor;
        SheetShares.Window whole = new SheetShares.Window(0, 0, factor, factor, across, down);
        float[] black = SheetShares.ofFilm(film, 0, down * factor, whole, progress);
        int[] table = LiveGreys.ofLuminance();
        int[] pixels = new int[black.length];
        for (int i = 0; i < pixels.length; i++) {
            float light = Math.max(0, Math.min(1, 1 - black[i]));
            pixels[i] = table[Math.round((ToneCurve.CODES - 1) * light)];
        }
        return new LivePicture(across, down, pixels);
    }
}
