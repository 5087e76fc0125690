package greyground.art.colour;

import greyground.art.page.Ink;
import greyground.art.page.Page;
import greyground.art.page.Samples;
import java.io.IOException;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;

/** Turns rows of samples into linear luminance. Holds tables only, so many threads may share one. */
public interface Luminance {
    /**
     * Converts {@code pixels} pixels that start at byte {@code offset}; {@code samples} may be used as scratch.
     *
     * @param into receives luminance, 65 535 for white, from index {@code at} on
     */
    void convert(byte[] samples, int offset, int pixels, short[] into, int at);

    /**
     * The conversion of a page: by its own profile where that can be used, else as sRGB (grey and RGB) or, for CMYK, by the
     * simple assumption of {@link PlainInks}. {@code minds} hears why a profile was passed over.
     */
    static Luminance of(Page page, Consumer<String> minds) {
        Luminance opaque = byProfile(page, minds);
        if (opaque == null) {
            opaque = assumed(page.samples(), page.ink());
        }
        return page.ink().alphaChannel() < 0 ? opaque : new OverPaper(page.samples(), page.ink(), opaque);
    }

    /** In words, what a page's samples are taken for. */
    static String describe(Page page, boolean profileUsed) {
        byte[] bytes = page.profile();
        Ink.Model model = page.ink().model();
        try {
            if (bytes != null && profileUsed && model != Ink.Model.PALETTE && model != Ink.Model.LAB) {
                return model + ", profile \"" + ColourProfile.read(bytes).description() + "\"";
            }
        } catch (IOException unreadable) {
            // Then it was passed over, and a remark says so.
        }
        return model
                + switch (model) {
                    case LAB -> "";
                    case CMYK -> ", plain inks assumed";
                    default -> ", sRGB assumed";
                };
    }

    private static @Nullable Luminance byProfile(Page page, Consumer<String> minds) {
        byte[] bytes = page.profile();
        Ink ink = page.ink();
        if (bytes == null || ink.model() == Ink.Model.PALETTE || ink.model() == Ink.Model.LAB) {
            return null;
        }
        try {
            ColourProfile profile = ColourProfile.read(bytes);
            if (profile.model() != ink.model()) {
                throw new IOException("it describes \"" + profile.space().strip() + "\", not " + ink.model());
            }
            if (profile.usesTables()) {
                return ProfileGrid.of(page.samples(), ink, profile);
            }
            return switch (ink.model()) {
                case GREY -> new SingleTable(page.samples(), ink.inverted(), profile.greyResponse());
                case RGB -> new WeightedTables(page.samples(), ink.inverted(), profile.responses(), profile.weights());
                default -> throw new IOException("it has no look-up table");
            };
        } catch (IOException | RuntimeException unusable) {
            minds.accept("the embedded colour profile is passed over: "
                    + (unusable instanceof IOException ? unusable.getMessage() : "it is damaged")
                    + (ink.model() == Ink.Model.CMYK ? "; plain inks are assumed" : "; sRGB is assumed"));
            return null;
        }
    }

    private static Luminance assumed(Samples samples, Ink ink) {
        return switch (ink.model()) {
            case GREY -> new SingleTable(samples, ink.inverted(), Lightness::linear);
            case LAB -> new SingleTable(samples, ink.inverted(), x -> Lightness.luminance(100 * x));
            case PALETTE -> new SingleTable(samples, paletteResponse(ink.palette()));
            case RGB -> {
                DoubleUnaryOperator curve = Lightness::linear;
                yield new WeightedTables(
                        samples, ink.inverted(), new DoubleUnaryOperator[] {curve, curve, curve}, Lightness.weights());
            }
            case CMYK -> new PlainInks(samples, ink.inverted());
        };
    }

    private static short[] paletteResponse(float @Nullable [][] palette) {
        short[] table = new short[256];
        double[] weights = Lightness.weights();
        for (int i = 0; palette != null && i < Math.min(table.length, palette.length); i++) {
            float[] entry = palette[i];
            double light = 0;
            for (int c = 0; c < 3; c++) {
                light += weights[c] * Lightness.linear(entry[c]);
            }
            table[i] = code(light * entry[3] + 1 - entry[3]);
        }
        return table;
    }

    /** The plane's code of a luminance, clipped to 0..1. */
    static short code(double luminance) {
        return (short) (int) (65_535 * Math.min(1, Math.max(0, luminance)) + 0.5);
    }
}
