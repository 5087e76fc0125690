package greyground.art.colour;

import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.tone.ColourWeights;
import greyground.tone.Lightness;

/**
 * What the colour of L*a*b* art adds to its luminance: X/Xn and Z/Zn are the luminances of other lightnesses (CIE 15:2004, 8.2.1.1), L* + 116
 * a*&#47;500 and L* - 116 b*&#47;200, on white's own line below L* 8. a* and b* are signed, 256 steps from -128 (TIFF 6.0, section 23).
 */
final class LabColour implements ColouredLight.Beside {
    private final Samples samples;
    private final double ofX;
    private final double ofZ;
    /** Steps of a* or b* to the unit: 1 with eight bits, 256 with sixteen. */
    private final double steps;

    LabColour(Samples samples, ColourWeights weights) {
        this.samples = samples;
        double[] beside = weights.besideLuminance();
        this.ofX = beside[0];
        this.ofZ = beside[1];
        this.steps = samples.bytesPerSample() == 1 ? 1 : 256;
    }

    @Override
    public double of(byte[] bytes, int from) {
        double a = signed(bytes, from + samples.bytesPerSample());
        double b = signed(bytes, from + 2 * samples.bytesPerSample());
        if (a == 0 && b == 0) {
            return 0;
        }
        double lightness = 100.0 * SampleReading.one(bytes, from, samples) / samples.most();
        double y = Lightness.toLuminance(lightness);
        return ofX * (Lightness.toLuminance(lightness + 116 * a / 500) - y)
                + ofZ * (Lightness.toLuminance(lightness - 116 * b / 200) - y);
    }

    private double signed(byte[] bytes, int at) {
        int sample = SampleReading.one(bytes, at, samples);
        return (samples.bytesPerSample() == 1 ? (byte) sample : (short) sample) / steps;
    }
}
