package greyground.picture;

import greyground.quantity.Refusal;

/**
 * Pixels for a screen, sRGB (IEC 61966-2-1:1999), 8 bits a sample, row by row from the top left. Whoever holds it owns the
 * array and should not change it.
 *
 * @param width pixels across, at least 1
 * @param height pixels down, at least 1
 * @param dotsPerInch at which it has its true size; 0 where it has none
 * @param samples red, green, blue of each pixel
 */
@SuppressWarnings("ArrayRecordComponent") // megapixels, handed on without copying; equality is never asked
public record Picture(int width, int height, double dotsPerInch, byte[] samples) {
    private static final long MOST_PIXELS = 120_000_000;

    public Picture {
        if (width < 1 || height < 1 || (long) width * height > MOST_PIXELS) {
            throw Refusal.use("a picture of " + width + " x " + height + " pixels is asked for; it must have 1 to "
                    + MOST_PIXELS + " pixels: ask for fewer dots per inch");
        }
        if (samples.length != 3 * width * height) {
            throw Refusal.use("a picture of " + width + " x " + height + " pixels has " + samples.length
                    + " samples; it needs " + 3 * width * height);
        }
    }

    /** An even ground. */
    static Picture filled(int width, int height, double dotsPerInch, int colour) {
        byte[] samples = new byte[Math.multiplyExact(3, Math.multiplyExact(width, height))];
        for (int i = 0; i < samples.length; i += 3) {
            samples[i] = (byte) (colour >> 16);
            samples[i + 1] = (byte) (colour >> 8);
            samples[i + 2] = (byte) colour;
        }
        return new Picture(width, height, dotsPerInch, samples);
    }

    /** Lays another picture on this one, in place; it must lie within. */
    void lay(Picture other, int left, int top) {
        for (int y = 0; y < other.height; y++) {
            System.arraycopy(
                    other.samples, 3 * y * other.width, samples, 3 * ((top + y) * width + left), 3 * other.width);
        }
    }

    /** The same seen from behind. */
    public Picture mirrored() {
        byte[] turned = new byte[samples.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                System.arraycopy(samples, 3 * (y * width + x), turned, 3 * (y * width + width - 1 - x), 3);
            }
        }
        return new Picture(width, height, dotsPerInch, turned);
    }

    /** Colour of a pixel, 0xRRGGBB. */
    public int colour(int x, int y) {
        int at = 3 * (y * width + x);
        return ((samples[at] & 0xFF) << 16) | ((samples[at + 1] & 0xFF) << 8) | (samples[at + 2] & 0xFF);
    }

    /** Whether every pixel is neutral, so that one sample says it. */
    public boolean isGrey() {
        for (int i = 0; i < samples.length; i += 3) {
            if (samples[i] != samples[i + 1] || samples[i] != samples[i + 2]) {
                return false;
            }
        }
        return true;
    }
}
