package greyground.art.colour;

import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import java.util.function.DoubleUnaryOperator;

/** Luminance of one channel, looked up. */
final class SingleTable implements Luminance {
    private final Samples samples;
    private final short[] table;

    /** {@code table} has an entry for every sample. */
    SingleTable(Samples samples, short[] table) {
        this.samples = samples;
        this.table = table;
    }

    SingleTable(Samples samples, boolean inverted, DoubleUnaryOperator response) {
        this(samples, new short[samples.most() + 1]);
        int most = samples.most();
        for (int i = 0; i <= most; i++) {
            table[i] = Luminance.code(response.applyAsDouble((inverted ? most - i : i) / (double) most));
        }
    }

    @Override
    public void convert(byte[] bytes, int offset, int pixels, short[] into, int at) {
        int step = samples.channels() * samples.bytesPerSample();
        if (samples.bytesPerSample() == 1) {
            for (int x = 0, from = offset; x < pixels; x++, from += step) {
                into[at + x] = table[bytes[from] & 0xFF];
            }
        } else {
            boolean big = samples.bigEndian();
            for (int x = 0, from = offset; x < pixels; x++, from += step) {
                into[at + x] = table[SampleReading.two(bytes, from, big)];
            }
        }
    }
}
