package greyground.art.colour;

import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.tone.Srgb;

/**
 * Luminance of CMYK art that carries no usable profile. Assumed: each ink takes away its own third of an sRGB picture and
 * black takes from all three, {@code R = (1 - C)(1 - K)} and so on in sRGB code, before luminance is taken.
 */
final class PlainInks implements Luminance {
    /** Steps of the product (1 - C)(1 - K): as many as two 8-bit samples can make. */
    private static final int STEPS = 255 * 255;

    private final Samples samples;
    private final boolean inverted;
    private final double[] weights;
    private final float[] table = new float[STEPS + 1];

    /** {@code weights} are what red, green and blue of 1 add to the grey. */
    PlainInks(Samples samples, boolean inverted, double[] weights) {
        this.samples = samples;
        this.weights = weights.clone();
        this.inverted = inverted;
        for (int i = 0; i <= STEPS; i++) {
            table[i] = (float) Srgb.decode(i / (double) STEPS);
        }
    }

    @Override
    public void convert(byte[] bytes, int offset, int pixels, short[] into, int at) {
        int size = samples.bytesPerSample();
        int step = samples.channels() * size;
        int flip = inverted ? 0 : samples.most();
        double scale = STEPS / ((double) samples.most() * samples.most());
        for (int x = 0, from = offset; x < pixels; x++, from += step) {
            double black = (flip ^ SampleReading.one(bytes, from + 3 * size, samples)) * scale;
            double light = 0;
            for (int c = 0; c < 3; c++) {
                int open = flip ^ SampleReading.one(bytes, from + c * size, samples);
                light += weights[c] * table[(int) (open * black + 0.5)];
            }
            into[at + x] = Luminance.code(light);
        }
    }
}
