package greyground.art.colour;

import greyground.art.page.Interpretation;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
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

    private static float[] roots(ColourProfile profile, int channels, int nodes) {
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
        WritableRaster grey =
                Raster.createWritableRaster(new BandedSampleModel(DataBuffer.TYPE_USHORT, across, down, 1), null);
        ICC_Profile from = ICC_Profile.getInstance(profile.bytes());
        // The platform's grey space is linear, so its samples are luminance.
        ICC_Profile linear = ICC_Profile.getInstance(java.awt.color.ColorSpace.CS_GRAY);
        new ColorConvertOp(new ICC_Profile[] {from, linear}, null).filter(device, grey);
        float[] roots = new float[count];
        for (int i = 0; i < count; i++) {
            roots[i] = (float) StrictMath.cbrt(grey.getSample(i % across, i / across, 0) / 65_535.0);
        }
        return roots;
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
