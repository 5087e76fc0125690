package greyground.art.colour;

import greyground.art.page.Interpretation;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import greyground.tone.Adaptation;
import greyground.tone.ColourWeights;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BandedSampleModel;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;

/**
 * Luminance through a profile's look-up tables: the platform's colour engine is asked once, at the nodes of an even grid over
 * the device values; between nodes the cube root of luminance, which is nearly lightness, is interpolated in every
 * direction. Nodes a channel (assumed fine enough; the tests hold it to Little CMS): 1024 grey, 33 RGB, 21 CMYK.
 */
final class ProfileGrid implements Luminance {
    /** X, Y and Z of 1 in sixteen bits, which reach to 1 + 32767/32768 (ICC.1:2010, 6.3.4.2). */
    private static final double XYZ_OF_ONE = 32_768;

    private final Samples samples;
    private final boolean inverted;
    private final int channels;
    private final int nodes;
    private final float[] roots;
    private final int[] cornerSteps;

    private ProfileGrid(Samples samples, boolean inverted, int channels, int nodes, float[] roots) {
        this.samples = samples;
        this.inverted = inverted;
        this.channels = channels;
        this.nodes = nodes;
        this.roots = roots;
        this.cornerSteps = cornerSteps(channels, nodes);
    }

    /**
     * Builds the grid.
     *
     * @throws IOException if the colour engine does not take the profile
     */
    static ProfileGrid of(Samples samples, Interpretation meaning, ColourProfile profile) throws IOException {
        int channels = meaning.model().channels();
        int nodes = channels == 1 ? 1024 : channels == 3 ? 33 : 21;
        try {
            return new ProfileGrid(samples, meaning.inverted(), channels, nodes, roots(profile, channels, nodes));
        } catch (RuntimeException hostile) {
            // The colour engine throws unchecked exceptions of several kinds at damaged profiles.
            throw new Unreadable("the colour engine does not take it", hostile);
        }
    }

    /**
     * What colour adds to that luminance: at the nodes as a difference of cube roots, so that between them colours bend as luminance does.
     *
     * @throws IOException if the colour engine does not take the profile
     */
    ColouredLight.Beside beside(ColourProfile profile, ColourWeights weights) throws IOException {
        double[] beside = weights.besideLuminance();
        float[] values = new float[roots.length];
        try {
            WritableRaster xyz = connected(profile, channels, nodes, ColorSpace.CS_CIEXYZ, 3);
            int[] found = new int[3];
            for (int i = 0; i < values.length; i++) {
                xyz.getPixel(i % xyz.getWidth(), i / xyz.getWidth(), found);
                double y = found[1] / XYZ_OF_ONE;
                double more = beside[0] * (found[0] / XYZ_OF_ONE / Adaptation.D50.x() - y)
                        + beside[1] * (found[2] / XYZ_OF_ONE / Adaptation.D50.z() - y);
                values[i] = (float) (StrictMath.cbrt(y + more) - StrictMath.cbrt(y));
            }
        } catch (RuntimeException hostile) {
            throw new Unreadable("the colour engine does not take it", hostile);
        }
        ProfileGrid differences = new ProfileGrid(samples, inverted, channels, nodes, values);
        int size = samples.bytesPerSample();
        int flip = inverted ? samples.most() : 0;
        float scale = (nodes - 1) / (float) samples.most();
        return (bytes, from) -> {
            float[] corners = new float[1 << channels];
            double more = differences.interpolate(bytes, from, size, flip, scale, corners);
            double root = interpolate(bytes, from, size, flip, scale, corners);
            return (root + more) * (root + more) * (root + more) - root * root * root;
        };
    }

    private static float[] roots(ColourProfile profile, int channels, int nodes) {
        // The platform's grey space is linear, so its samples are luminance.
        WritableRaster grey = connected(profile, channels, nodes, ColorSpace.CS_GRAY, 1);
        float[] roots = new float[(int) StrictMath.pow(nodes, channels)];
        for (int i = 0; i < roots.length; i++) {
            roots[i] = (float) StrictMath.cbrt(grey.getSample(i % grey.getWidth(), i / grey.getWidth(), 0) / 65_535.0);
        }
        return roots;
    }

    /** What the colour engine makes of every node, in one of the platform's spaces. */
    private static WritableRaster connected(
            ColourProfile profile, int channels, int nodes, int space, int spaceChannels) {
        int count = (int) StrictMath.pow(nodes, channels);
        int across = nodes * nodes;
        int down = Math.max(1, count / across);
        if (channels == 1) {
            across = nodes;
            down = 1;
        }
        WritableRaster device = Raster.createWritableRaster(
                new BandedSampleModel(DataBuffer.TYPE_USHORT, across, down, channels), null);
        for (int i = 0; i < count; i++) {
            for (int c = 0, rest = i; c < channels; c++, rest /= nodes) {
                device.setSample(i % across, i / across, c, Math.round(rest % nodes * 65_535f / (nodes - 1)));
            }
        }
        WritableRaster connected = Raster.createWritableRaster(
                new BandedSampleModel(DataBuffer.TYPE_USHORT, across, down, spaceChannels), null);
        ICC_Profile from = ICC_Profile.getInstance(profile.bytes());
        ICC_Profile to = ICC_Profile.getInstance(space);
        new ColorConvertOp(new ICC_Profile[] {from, to}, null).filter(device, connected);
        return connected;
    }

    @Override
    public void convert(byte[] bytes, int offset, int pixels, short[] into, int at) {
        int size = samples.bytesPerSample();
        int step = samples.channels() * size;
        int flip = inverted ? samples.most() : 0;
        float scale = (nodes - 1) / (float) samples.most();
        float[] corners = new float[1 << channels];
        for (int x = 0, from = offset; x < pixels; x++, from += step) {
            float root = interpolate(bytes, from, size, flip, scale, corners);
            into[at + x] = Luminance.code((double) root * root * root);
        }
    }

    /** Weighs the corners of one grid cell, channel by channel. */
    private float interpolate(byte[] bytes, int from, int size, int flip, float scale, float[] weights) {
        weights[0] = 1;
        int base = 0;
        for (int c = 0, stride = 1; c < channels; c++, stride *= nodes) {
            float place = (flip ^ SampleReading.one(bytes, from + c * size, samples)) * scale;
            int below = Math.min((int) place, nodes - 2);
            float above = place - below;
            base += below * stride;
            for (int k = (1 << c) - 1; k >= 0; k--) {
                weights[k | 1 << c] = weights[k] * above;
                weights[k] *= 1 - above;
            }
        }
        float sum = 0;
        for (int k = 0; k < 1 << channels; k++) {
            sum += weights[k] * roots[base + cornerSteps[k]];
        }
        return sum;
    }

    /** How far each corner of a cell lies from its first, in the table. */
    private static int[] cornerSteps(int channels, int nodes) {
        int[] steps = new int[1 << channels];
        for (int k = 0; k < steps.length; k++) {
            for (int c = 0, stride = 1; c < channels; c++, stride *= nodes) {
                steps[k] += (k >> c & 1) * stride;
            }
        }
        return steps;
    }
}
