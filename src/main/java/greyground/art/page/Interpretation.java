package greyground.art.page;

import greyground.tone.Primaries;
import org.jspecify.annotations.Nullable;

/**
 * What a pixel's samples mean.
 *
 * @param model the colour model of the first channels; further channels but alpha are passed over
 * @param inverted whether each colour sample counts the other way round: grey where 0 is white, CMYK where 0 is full ink
 * @param alpha how transparency was mixed into the colour samples
 * @param alphaChannel which channel is alpha, or -1
 * @param palette for {@link Model#PALETTE}, coded red, green, blue and alpha of each entry, 0 to 1; else null
 * @param coding how light is coded where no profile says so
 */
@SuppressWarnings("ArrayRecordComponent") // Never compared, and never seen outside this package.
public record Interpretation(
        Model model, boolean inverted, Alpha alpha, int alphaChannel, float @Nullable [][] palette, Coding coding) {
    /** Colour models that art comes in. */
    public enum Model {
        /** One channel, light counts up. */
        GREY(1),
        /** One channel that names an entry of a palette of sRGB colours. */
        PALETTE(1),
        /** Red, green and blue light. */
        RGB(3),
        /** Cyan, magenta, yellow and black ink. */
        CMYK(4),
        /** CIE L*a*b*, of which L* is luminance; a* and b*, signed, count where colours are seen otherwise. */
        LAB(3);

        private final int channels;

        Model(int channels) {
            this.channels = channels;
        }

        /** Channels that carry colour. */
        public int channels() {
            return channels;
        }
    }

    /** How colour samples were mixed with transparency before they were stored. */
    public enum Alpha {
        /** Not mixed, or no alpha at all. */
        STRAIGHT,
        /** Multiplied by alpha: over black. */
        OVER_BLACK,
        /** Laid over white. */
        OVER_WHITE
    }

    /**
     * How grey and RGB samples stand for light.
     *
     * @param gamma samples to this power are light; 0 for the curve of sRGB
     * @param lights the lights of RGB
     */
    public record Coding(double gamma, Primaries lights) {
        public static final Coding SRGB = new Coding(0, Primaries.SRGB);
    }

    /** Coded as sRGB where no profile says otherwise. */
    public Interpretation(Model model, boolean inverted, Alpha alpha, int alphaChannel, float @Nullable [][] palette) {
        this(model, inverted, alpha, alphaChannel, palette, Coding.SRGB);
    }

    public static Interpretation plain(Model model) {
        return new Interpretation(model, false, Alpha.STRAIGHT, -1, null);
    }

    public static Interpretation withAlpha(Model model) {
        return new Interpretation(model, false, Alpha.STRAIGHT, model.channels(), null);
    }

    public static Interpretation palette(float[][] entries) {
        return new Interpretation(Model.PALETTE, false, Alpha.STRAIGHT, -1, entries);
    }

    public Interpretation inverse() {
        return new Interpretation(model, !inverted, alpha, alphaChannel, palette, coding);
    }

    public Interpretation coded(Coding stated) {
        return new Interpretation(model, inverted, alpha, alphaChannel, palette, stated);
    }
}
