package greyground.picture;

import greyground.tone.Lightness;
import greyground.tone.Srgb;

/**
 * The colours of our pictures: neutral greys, since a tone can't be judged beside a hue, and copper for what is copper or is
 * pointed at. Written 0xRRGGBB in sRGB.
 */
final class Palette {
    /** The mat that pictures lie on: lighter than a middle grey, so that both paper and black stand out from it. */
    static final int MAT = 0xC8C8C8;

    static final int INK = 0x1E1E1E;
    static final int QUIET = 0x5A5A5A;
    static final int RULE = 0xB4B4B4;
    static final int FAINT = 0xDCDCDC;
    static final int PAGE = 0xFAFAFA;

    /** A wish, behind what comes of it. */
    static final int WISH = 0xD2D2D2;

    /** Tones that nothing prints. */
    static final int GAP = 0xF1E3D8;

    /** Copper as a line or a word: dark enough to read on the page. */
    static final int ACCENT = 0xB4562A;

    /** Hardened resist; real resist is blue or violet, which would tint the tones beside it. */
    static final int RESIST = 0x555555;

    /** Polished copper under an even light. */
    static final int COPPER = 0xDE9A70;

    // Brightness of the surface against the colour it has there: shadow, deep bite, face, glint.
    private static final double[] COPPER_BRIGHTNESS = {0, 0.35, 1, 1.6};
    private static final int[] COPPER_COLOURS = {0x1C0B05, 0x7A3D22, COPPER, 0xFFEDE0};

    private Palette() {}

    /** The grey that shows a reflectance truly: Y 0 to 1 in sRGB's own coding. */
    static int ofReflectance(double reflectance) {
        int code = (int) Math.round(255 * Srgb.encode(Math.max(0, Math.min(1, reflectance))));
        return code << 16 | code << 8 | code;
    }

    /** The grey of a CIE L*. */
    static int ofLightness(double lightness) {
        return ofReflectance(Lightness.toLuminance(Math.max(0, lightness)));
    }

    /** Copper's colour at a brightness, 1 being its polished face seen flat. */
    static int copper(double brightness) {
        int upper = 1;
        while (upper < COPPER_BRIGHTNESS.length - 1 && COPPER_BRIGHTNESS[upper] < brightness) {
            upper++;
        }
        double from = COPPER_BRIGHTNESS[upper - 1];
        double share = (brightness - from) / (COPPER_BRIGHTNESS[upper] - from);
        return mixed(COPPER_COLOURS[upper - 1], COPPER_COLOURS[upper], Math.max(0, Math.min(1, share)));
    }

    /** Mixes two colours in light, as small spots of them would seem from afar. */
    static int mixed(int none, int all, double share) {
        int colour = 0;
        for (int shift = 16; shift >= 0; shift -= 8) {
            double from = Srgb.decode((none >> shift & 0xFF) / 255.0);
            double to = Srgb.decode((all >> shift & 0xFF) / 255.0);
            colour |= (int) Math.round(255 * Srgb.encode(from + share * (to - from))) << shift;
        }
        return colour;
    }
}
