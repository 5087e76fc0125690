package greyground.app.sight;

import greyground.picture.Picture;

/**
 * Pixels for a window: sRGB, row by row from the top left, 0xAARRGGBB; 0 where there is nothing to see. Whoever holds it owns the
 * array and should not change it.
 *
 * @param width pixels across
 * @param height pixels down
 * @param pixels one number a pixel
 */
@SuppressWarnings("ArrayRecordComponent") // handed to the screen without copying; equality is never asked
public record LivePicture(int width, int height, int[] pixels) {
    public static final int OPAQUE = 0xFF000000;

    public static LivePicture of(Picture picture) {
        int[] pixels = new int[picture.width() * picture.height()];
        byte[] samples = picture.samples();
        for (int i = 0; i < pixels.length; i++) {
            pixels[i] = OPAQUE
                    | (samples[3 * i] & 0xFF) << 16
                    | (samples[3 * i + 1] & 0xFF) << 8
                    | (samples[3 * i + 2] & 0xFF);
        }
        return new LivePicture(picture.width(), picture.height(), pixels);
    }
}
