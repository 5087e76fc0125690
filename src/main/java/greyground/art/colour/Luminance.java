package greyground.art.colour;

import greyground.art.page.Interpretation;
import greyground.art.page.Page;
import greyground.art.page.SampleReading;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import greyground.tone.ColourWeights;
import greyground.tone.Lightness;
import greyground.tone.Primaries;
import greyground.tone.Srgb;
import java.io.IOException;
import java.util.Optional;
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
     * simple assumption of {@link PlainInks}; luminance is that of the profile connection space either way. {@code minds}
     * hears why a profile was passed over.
     */
    static Luminance of(Page page, Consumer<String> minds) {
        return of(page, Optional.empty(), minds);
    }

    /** The same with colours seen by other weights than those of luminance; greys are the same. */
    static Luminance of(Page page, Optional<ColourWeights> weights, Consumer<String> minds) {
        float[][] palette = page.meaning().palette();
        Luminance opaque = palette == null
                ? opaque(page.samples(), page.meaning(), page.profile(), weights, minds)
                : new SingleTable(page.samples(), entries(palette, page, weights, minds));
        return page.meaning().alphaChannel() < 0 ? opaque : new OverPaper(page.samples(), page.meaning(), opaque);
    }

    /** In words, what a page's samples are taken for. */
    static String describe(Page page, boolean profileUsed) {
        byte[] bytes = page.profile();
        Interpretation.Model model = page.meaning().model();
        try {
            if (bytes != null && profileUsed && model != Interpretation.Model.LAB) {
                return model + ", profile \"" + ColourProfile.read(bytes).description() + "\"";
            }
        } catch (IOException unreadable) {
            // Then it was passed over, and a remark says so.
        }
        return model
                + switch (model) {
                    case LAB -> "";
                    case CMYK -> ", plain inks assumed";
                    default ->
                        page.meaning().coding().equals(Interpretation.Coding.SRGB)
                                ? ", sRGB assumed"
                                : ", gamma and colours as stated";
                };
    }

    /** Whether the page itself says what its samples mean, by a profile that is used, a gamma or a model that has but one meaning. */
    static boolean stated(Page page, boolean profileUsed) {
        return switch (page.meaning().model()) {
            case LAB -> true;
            case CMYK -> page.profile() != null && profileUsed;
            default ->
                (page.profile() != null && profileUsed)
                        || !page.meaning().coding().equals(Interpretation.Coding.SRGB);
        };
    }

    private static Luminance opaque(
            Samples samples,
            Interpretation meaning,
            byte @Nullable [] profile,
            Optional<ColourWeights> weights,
            Consumer<String> minds) {
        Luminance known = byProfile(samples, meaning, profile, weights, minds);
        return known == null ? assumed(samples, meaning, weights) : known;
    }

    private static @Nullable Luminance byProfile(
            Samples samples,
            Interpretation meaning,
            byte @Nullable [] bytes,
            Optional<ColourWeights> weights,
            Consumer<String> minds) {
        if (bytes == null || meaning.model() == Interpretation.Model.LAB) {
            return null;
        }
        try {
            ColourProfile profile = ColourProfile.read(bytes);
            if (profile.model() != meaning.model()) {
                throw new Unreadable("it describes \"" + profile.space().strip() + "\", not " + meaning.model());
            }
            if (profile.usesTables()) {
                ProfileGrid grid = ProfileGrid.of(samples, meaning, profile);
                return weights.isEmpty() || meaning.model() == Interpretation.Model.GREY
                        ? grid
                        : new ColouredLight(samples, grid, grid.beside(profile, weights.get()));
            }
            return switch (meaning.model()) {
                case GREY -> new SingleTable(samples, meaning.inverted(), profile.greyResponse());
                case RGB -> {
                    WeightedTables tables =
                            new WeightedTables(samples, meaning.inverted(), profile.responses(), profile.weights());
                    yield weights.isEmpty() ? tables : coloured(samples, tables, weights.get(), profile.toXyz());
                }
                default -> throw new Unreadable("it has no look-up table");
            };
        } catch (IOException | RuntimeException unusable) {
            minds.accept("the embedded colour profile is passed over: "
                    + (unusable instanceof Unreadable ours ? ours.reason() : "it is damaged")
                    + (meaning.model() == Interpretation.Model.CMYK
                            ? "; plain inks are assumed"
                            : "; sRGB is assumed"));
            return null;
        }
    }

    private static Luminance coloured(Samples samples, WeightedTables tables, ColourWeights weights, double[][] toXyz) {
        return new ColouredLight(samples, tables, tables.beside(weights.besideLuminance(toXyz)));
    }

    private static Luminance assumed(Samples samples, Interpretation meaning, Optional<ColourWeights> weights) {
        double gamma = meaning.coding().gamma();
        DoubleUnaryOperator curve = gamma == 0 ? Srgb::decode : x -> StrictMath.pow(x, gamma);
        return switch (meaning.model()) {
            case GREY -> new SingleTable(samples, meaning.inverted(), curve);
            case LAB -> {
                Luminance lightness = new SingleTable(samples, meaning.inverted(), x -> Lightness.toLuminance(100 * x));
                // L* alone is allowed.
                yield weights.isEmpty() || samples.channels() < 3
                        ? lightness
                        : new ColouredLight(samples, lightness, new LabColour(samples, weights.get()));
            }
            case PALETTE, RGB -> {
                WeightedTables tables = new WeightedTables(
                        samples,
                        meaning.inverted(),
                        new DoubleUnaryOperator[] {curve, curve, curve},
                        meaning.coding().lights().luminances());
                yield weights.isEmpty()
                        ? tables
                        : coloured(
                                samples,
                                tables,
                                weights.get(),
                                meaning.coding().lights().toD50());
            }
            case CMYK ->
                new PlainInks(
                        samples,
                        meaning.inverted(),
                        weights.map(ColourWeights::shares).orElseGet(Primaries.SRGB::luminances));
        };
    }

    /** The luminance of every value that a sample can name, its entry's colours taken as a row of RGB and laid over paper. */
    private static short[] entries(
            float[][] palette, Page page, Optional<ColourWeights> weights, Consumer<String> minds) {
        Samples row = new Samples(palette.length, 1, 3, 2, true);
        byte[] colours = new byte[6 * palette.length];
        for (int i = 0; i < 3 * palette.length; i++) {
            SampleReading.put(colours, 2 * i, Math.round(palette[i / 3][i % 3] * 65_535), row);
        }
        short[] table = new short[page.samples().most() + 1];
        opaque(
                        row,
                        Interpretation.plain(Interpretation.Model.RGB)
                                .coded(page.meaning().coding()),
                        page.profile(),
                        weights,
                        minds)
                .convert(colours, 0, palette.length, table, 0);
        for (int i = 0; i < palette.length; i++) {
            float alpha = palette[i][3];
            table[i] = code((table[i] & 0xFFFF) / 65_535.0 * alpha + 1 - alpha);
        }
        return table;
    }

    /** The plane's code of a luminance, clipped to 0..1. */
    static short code(double luminance) {
        return (short) (int) (65_535 * Math.min(1, Math.max(0, luminance)) + 0.5);
    }
}
