package greyground.plate.inspect;

import greyground.plate.Studio;
import greyground.raster.PixelRect;
import java.util.Arrays;

/** Inspects a film of 80 000 x 60 000 pixels, made band by band, and says what it found. */
final class HugeInspection {
    private static final int WIDTH = 80_000;
    private static final int HEIGHT = 60_000;
    private static final int BYTES = WIDTH / 8;
    private static final int BAND = 200;

    private HugeInspection() {}

    /** Grain of 8 pixels' checks; a black of 600 x 600 pixels in each quarter, and a bar right across the middle. */
    private static void row(byte[] band, int at, int y) {
        Arrays.fill(band, at, at + BYTES, (byte) 0);
        for (int x = y >> 3 & 1; x < BYTES; x += 2) {
            band[at + x] = (byte) 0xFF;
        }
        int inQuarter = y % (HEIGHT / 2);
        if (inQuarter >= 10_000 && inQuarter < 10_600) {
            Arrays.fill(band, at + 1500, at + 1575, (byte) 0xFF);
            Arrays.fill(band, at + 6500, at + 6575, (byte) 0xFF);
        }
        if (Math.abs(y - HEIGHT / 2) < 100) {
            Arrays.fill(band, at, at + BYTES, (byte) 0xFF);
        }
    }

    public static void main(String[] arguments) throws Exception {
        FilmLimits limits = FilmLimits.of(Studio.etched(40, 2));
        PixelRect plate = new PixelRect(0, 0, WIDTH, HEIGHT);
        try (FilmInspection inspection = new FilmInspection(limits, new FilmPitch(10, 10), WIDTH, HEIGHT, plate, 2)) {
            byte[] band = new byte[BAND * BYTES];
            for (int first = 0; first < HEIGHT; first += BAND) {
                for (int y = 0; y < BAND; y++) {
                    row(band, y * BYTES, first + y);
                }
                inspection.take(first, BAND, band);
            }
            FilmFindings found = inspection.finish();
            System.out.print(found.openBiteCount());
            for (FilmFindings.OpenBite bite : found.openBites()) {
                System.out.printf(
                        java.util.Locale.ROOT,
                        " %.1f,%.1f,%.1f",
                        bite.acrossMillimetres(),
                        bite.downMillimetres(),
                        bite.widthMillimetres());
            }
            System.out.println();
        }
    }
}
