package greyground.plate.neighbourhood;

import greyground.plate.FilmPatch;
import greyground.plate.PlateFilm;
import greyground.plate.PlateWindow;
import greyground.plate.edge.Rim;
import greyground.raster.BitPlane;
import greyground.raster.Progress;
import java.io.IOException;

/**
 * A film's bits in memory, an eighth of a byte to the pixel, so that any place can be looked at again. Places count as {@link PlateFilm}
 * counts them. Nothing changes once it is read.
 */
public final class FilmBits {
    private static final int STRIP_ROWS = 256;

    private final BitPlane bits;
    private final int left;
    private final int top;
    private final double pitchMicrometres;

    private FilmBits(BitPlane bits, int left, int top, double pitchMicrometres) {
        this.bits = bits;
        this.left = left;
        this.top = top;
        this.pitchMicrometres = pitchMicrometres;
    }

    /**
     * Reads what a window shows and what lies about it.
     *
     * @param film of bits
     * @param reachMicrometres of film to be read on each side of the window
     */
    public static FilmBits read(PlateFilm film, PlateWindow window, double reachMicrometres, Progress progress)
            throws IOException {
        double pitch = film.pitchMicrometres();
        int reach = (int) Math.ceil(reachMicrometres / pitch);
        int left = (int) Math.floor(window.leftMicrometres() / pitch) - reach;
        int top = (int) Math.floor(window.topMicrometres() / pitch) - reach;
        int width = (int) Math.ceil(window.columns() * window.cellMicrometres() / pitch) + 2 * reach + 1;
        int height = (int) Math.ceil(window.rows() * window.cellMicrometres() / pitch) + 2 * reach + 1;
        int wordsPerRow = (width + BitPlane.WORD - 1) / BitPlane.WORD;
        BitPlane bits = new BitPlane(wordsPerRow, height);
        try (PlateFilm.Rows rows = film.open()) {
            for (int y = 0; y < height; y += STRIP_ROWS) {
                int count = Math.min(STRIP_ROWS, height - y);
                BitPlane strip = rows.strip(top + y, count).bits(left, wordsPerRow * BitPlane.WORD);
                System.arraycopy(strip.words(), 0, bits.words(), y * wordsPerRow, count * wordsPerRow);
                progress.done((double) (y + count) / height);
            }
        }
        return new FilmBits(bits, left, top, pitch);
    }

    /** A patch; a wrapped one goes on past its sides as far as a neighbourhood looks. */
    static FilmBits of(FilmPatch patch) {
        int margin = Neighbourhood.MOST_RADIUS;
        int words = (patch.width() + 2 * margin + BitPlane.WORD - 1) / BitPlane.WORD;
        BitPlane bits = new BitPlane(words, patch.height() + 2 * margin);
        boolean wrapped = patch.rim() == Rim.WRAPPED;
        int around = wrapped ? margin : 0;
        for (int y = -around; y < patch.height() + around; y++) {
            for (int x = -around; x < patch.width() + around; x++) {
                if (patch.black(Math.floorMod(x, patch.width()), Math.floorMod(y, patch.height()))) {
                    int at = x + margin;
                    bits.words()[(y + margin) * words + (at >> 6)] |= Long.MIN_VALUE >>> at;
                }
            }
        }
        return new FilmBits(bits, -margin, -margin, patch.pitchMicrometres());
    }

    double pitchMicrometres() {
        return pitchMicrometres;
    }

    /**
     * The words of the rows about a pixel, as {@link Neighbourhood#pattern} takes them; clear where nothing was read.
     *
     * @param x pixel 0
     * @param y the middle row
     */
    void rows(int x, int y, long[] into) {
        int at = x - Neighbourhood.MOST_RADIUS - left;
        int word = at >> 6;
        int shift = at & 63;
        int row = y - into.length / 2 - top;
        for (int k = 0; k < into.length; k++, row++) {
            long bit = word(row, word) << shift;
            into[k] = shift == 0 ? bit : bit | (word(row, word + 1) >>> -shift);
        }
    }

    private long word(int row, int word) {
        return row < 0 || row >= bits.rows() || word < 0 || word >= bits.wordsPerRow()
                ? 0
                : bits.words()[row * bits.wordsPerRow() + word];
    }

    /** Cuts a square for the engine. */
    FilmPatch square(int x, int y, int side) {
        byte[] packed = new byte[(side + 7) / 8 * side];
        for (int row = 0; row < side; row++) {
            for (int column = 0; column < side; column++) {
                if (bits.get(x + column - left, y + row - top)) {
                    packed[row * ((side + 7) / 8) + (column >> 3)] |= (byte) (0x80 >> (column & 7));
                }
            }
        }
        return FilmPatch.cutting(side, side, pitchMicrometres, x * pitchMicrometres, y * pitchMicrometres, packed);
    }
}
