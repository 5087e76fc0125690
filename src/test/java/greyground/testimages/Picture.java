package greyground.testimages;

/** A picture made of samples that depend on their place alone. */
interface Picture {
    /** The file's name in testimages. */
    String file();

    int width();

    int height();

    /** 1 (grey), 3 (colour) or 4 (colour and alpha). */
    int bands();

    /** 8 or 16. */
    int bits();

    /** Writes row {@code y}, all bands of a pixel together. */
    void row(int y, int[] samples);

    /** The sRGB code of linear light at this picture's bit depth. */
    default int code(double linear) {
        double clipped = Noise.clamp(linear);
        double coded = clipped <= 0.0031308 ? 12.92 * clipped : 1.055 * StrictMath.pow(clipped, 1 / 2.4) - 0.055;
        return (int) Math.round(coded * ((1 << bits()) - 1));
    }
}
