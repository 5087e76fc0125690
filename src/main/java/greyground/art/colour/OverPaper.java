package greyground.art.colour;

import greyground.art.page.Interpretation;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;

/**
 * Lays transparent art over paper white, in linear light: {@code Y = alpha * Y + (1 - alpha)}. Colour that was stored mixed
 * with black or with white is first taken apart, in code values, which is where programs mix it (common practice).
 */
final class OverPaper implements Luminance {
    private final Samples samples;
    private final Interpretation meaning;
    private final Luminance opaque;

    OverPaper(Samples samples, Interpretation meaning, Luminance opaque) {
        this.samples = samples;
        this.meaning = meaning;
        this.opaque = opaque;
    }

    @Override
    public void convert(byte[] bytes, int offset, int pixels, short[] into, int at) {
        int size = samples.bytesPerSample();
        int step = samples.channels() * size;
        int most = samples.most();
        if (meaning.alpha() != Interpretation.Alpha.STRAIGHT) {
            for (int x = 0, from = offset; x < pixels; x++, from += step) {
                takeApart(bytes, from, most);
            }
        }
        opaque.convert(bytes, offset, pixels, into, at);
        int alphaAt = meaning.alphaChannel() * size;
        for (int x = 0, from = offset + alphaAt; x < pixels; x++, from += step) {
            int alpha = SampleReading.one(bytes, from, samples);
            if (alpha != most) {
                double light = (into[at + x] & 0xFFFF) / 65_535.0;
                into[at + x] = Luminance.code((light * alpha + most - alpha) / most);
            }
        }
    }

    private void takeApart(byte[] bytes, int from, int most) {
        int size = samples.bytesPerSample();
        int alpha = SampleReading.one(bytes, from + meaning.alphaChannel() * size, samples);
        if (alpha == 0 || alpha == most) {
            return;
        }
        for (int c = 0; c < meaning.model().channels(); c++) {
            int place = from + c * size;
            long mixed = SampleReading.one(bytes, place, samples);
            long under = meaning.alpha() == Interpretation.Alpha.OVER_WHITE ? most - alpha : 0;
            long straight = ((mixed - under) * most + alpha / 2) / alpha;
            SampleReading.put(bytes, place, (int) Math.max(0, Math.min(most, straight)), samples);
        }
    }
}
