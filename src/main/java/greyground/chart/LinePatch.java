package greyground.chart;

import greyground.plate.FilmPatch;

/** A few film rows of line pairs, as the film printer lays them: edges on the nearest pixel. */
public final class LinePatch {
    private static final int ROWS = 8;
    private static final int MOST_PAIRS = 12;

    private LinePatch() {}

    /**
     * Wrapped, of as many pairs as come nearest to whole pixels.
     *
     * @param periodMicrometres drawn at least two pixels wide
     */
    public static FilmPatch of(double periodMicrometres, double pitchMicrometres) {
        double pixels = Math.max(2, periodMicrometres / pitchMicrometres);
        int pairs = 1;
        double least = 1;
        for (int count = 1; count <= MOST_PAIRS; count++) {
            double off = Math.abs(count * pixels - Math.rint(count * pixels)) / count;
            if (off < least - 1e-9) {
                least = off;
                pairs = count;
            }
        }
        int width = (int) Math.rint(pairs * pixels);
        int bytesPerRow = (width + 7) / 8;
        byte[] packed = new byte[bytesPerRow * ROWS];
        for (int x = 0; x < width; x++) {
            double pair = (x + 0.5) * pairs / width;
            for (int y = 0; y < ROWS && pair - Math.floor(pair) < 0.5; y++) {
                packed[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
            }
        }
        return FilmPatch.tile(width, ROWS, pitchMicrometres, packed);
    }
}
