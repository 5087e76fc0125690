package greyground.art.colour;

import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import java.util.function.DoubleUnaryOperator;

/** Luminance of RGB: each channel's curve looked up, the linear lights weighted and summed; or what their colour adds to it. */
final class WeightedTables implements Luminance {
    private final Samples samples;
    private final float[][] tables = new float[3][];
    private final float[] weights = new float[3];

    WeightedTables(Samples samples, boolean inverted, DoubleUnaryOperator[] responses, double[] weights) {
        this.samples = samples;
        int most = samples.most();
        for (int c = 0; c < 3; c++) {
            this.weights[c] = (float) (65_535 * weights[c]);
        }
        // Channels with one curve share one table: it stays in the cache.
        tables[0] = table(responses[0], most, inverted);
        tables[1] = responses[1] == responses[0] ? tables[0] : table(responses[1], most, inverted);
        tables[2] = responses[2] == responses[0] ? tables[0] : table(responses[2], most, inverted);
    }

    /** What {@code beside}'s shares of red and blue add where they differ from green. */
    ColouredLight.Beside beside(double[] beside) {
        int size = samples.bytesPerSample();
        return (bytes, from) -> {
            float green = tables[1][SampleReading.one(bytes, from + size, samples)];
            return beside[0] * (tables[0][SampleReading.one(bytes, from, samples)] - green)
                    + beside[1] * (tables[2][SampleReading.one(bytes, from + 2 * size, samples)] - green);
        };
    }

    private static float[] table(DoubleUnaryOperator response, int most, boolean inverted) {
        float[] table = new float[most + 1];
        for (int i = 0; i <= most; i++) {
            table[i] = (float) response.applyAsDouble((inverted ? most - i : i) / (double) most);
        }
        return table;
    }

    @Override
    public void convert(byte[] bytes, int offset, int pixels, short[] into, int at) {
        int step = samples.channels() * samples.bytesPerSample();
        float[] red = tables[0];
        float[] green = tables[1];
        float[] blue = tables[2];
        float wr = weights[0];
        float wg = weights[1];
        float wb = weights[2];
        if (samples.bytesPerSample() == 1) {
            for (int x = 0, from = offset; x < pixels; x++, from += step) {
                float light = wr * red[bytes[from] & 0xFF]
                        + wg * green[bytes[from + 1] & 0xFF]
                        + wb * blue[bytes[from + 2] & 0xFF];
                into[at + x] = clip(light);
            }
        } else {
            boolean big = samples.bigEndian();
            for (int x = 0, from = offset; x < pixels; x++, from += step) {
                float light = wr * red[SampleReading.two(bytes, from, big)]
                        + wg * green[SampleReading.two(bytes, from + 2, big)]
                        + wb * blue[SampleReading.two(bytes, from + 4, big)];
                into[at + x] = clip(light);
            }
        }
    }

    private static short clip(float light) {
        return (short) Math.max(0, Math.min(65_535, (int) (light + 0.5f)));
    }
}
