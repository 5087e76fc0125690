package greyground.art.colour;

import greyground.art.page.Samples;
import greyground.tone.ColourWeights;

/**
 * Colours seen otherwise than by luminance: what {@link ColourWeights} add is added to the luminance that a colour has anyway, so that a grey,
 * to which they add nothing, stays the same bit for bit.
 */
final class ColouredLight implements Luminance {
    private final Samples samples;
    private final Luminance luminance;
    private final Beside beside;

    /** What a pixel's colour adds to its luminance; 0 for a grey. */
    @FunctionalInterface
    interface Beside {
        /** For the pixel that starts at byte {@code from}. */
        double of(byte[] bytes, int from);
    }

    ColouredLight(Samples samples, Luminance luminance, Beside beside) {
        this.samples = samples;
        this.luminance = luminance;
        this.beside = beside;
    }

    @Override
    public void convert(byte[] bytes, int offset, int pixels, short[] into, int at) {
        luminance.convert(bytes, offset, pixels, into, at);
        int step = samples.channels() * samples.bytesPerSample();
        for (int x = 0, from = offset; x < pixels; x++, from += step) {
            double more = beside.of(bytes, from);
            if (more != 0) {
                into[at + x] = Luminance.code((into[at + x] & 0xFFFF) / 65_535.0 + more);
            }
        }
    }
}
