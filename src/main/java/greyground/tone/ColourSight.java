package greyground.tone;

import greyground.quantity.Refusal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * How colours become greys: as the eye sees them, or as if a photograph of them had been taken, on an emulsion and through a filter. As if,
 * since three inks or three lights of a scan are not the world's spectra.
 *
 * @param filter before the lens
 * @param emulsion what it falls on
 * @param own weights of the printmaker's own in place of both
 */
public record ColourSight(Filter filter, Emulsion emulsion, Optional<ColourWeights> own) {
    /** As the eye sees lightness: the luminance that colour itself has, untouched. */
    public static final ColourSight EYE = new ColourSight(Filter.NONE, Emulsion.LUMINANCE, Optional.empty());

    /** Coloured glass before the lens, by what it lets through; cut-offs are assumed, dyes differ. */
    public enum Filter {
        NONE,
        YELLOW,
        ORANGE,
        RED,
        GREEN,
        BLUE
    }

    /** What receives the light; films by the wavelengths that they are made sensitive to, taken as even within them (assumed). */
    public enum Emulsion {
        /** The eye. */
        LUMINANCE,
        /** To 650 nm. */
        PANCHROMATIC,
        /** To 580 nm: blind to red. */
        ORTHOCHROMATIC,
        /** Bare silver halide, to 500 nm: blind to all but blue and violet. */
        BLUE_SENSITIVE
    }

    private record Pair(Filter filter, Emulsion emulsion) {}

    /**
     * Sums over wavelengths of sensitivity times filter times the reflectances by which Smits (1999) paints red, green and blue, good to
     * about 0.04; {@code ColourSightTest} computes them anew. Pairs under which an emulsion gets less than a hundredth of its light
     * (assumed) are missing.
     */
    private static final Map<Pair, ColourWeights> WEIGHTS = Map.ofEntries(
            weights(Filter.YELLOW, Emulsion.LUMINANCE, 26, 70, 4),
            weights(Filter.ORANGE, Emulsion.LUMINANCE, 44, 55, 1),
            weights(Filter.RED, Emulsion.LUMINANCE, 88, 10, 2),
            weights(Filter.GREEN, Emulsion.LUMINANCE, 2, 93, 5),
            weights(Filter.BLUE, Emulsion.LUMINANCE, 1, 32, 67),
            weights(Filter.NONE, Emulsion.PANCHROMATIC, 24, 37, 39),
            weights(Filter.YELLOW, Emulsion.PANCHROMATIC, 36, 56, 8),
            weights(Filter.ORANGE, Emulsion.PANCHROMATIC, 61, 38, 1),
            weights(Filter.RED, Emulsion.PANCHROMATIC, 91, 7, 2),
            weights(Filter.GREEN, Emulsion.PANCHROMATIC, 2, 88, 10),
            weights(Filter.BLUE, Emulsion.PANCHROMATIC, 4, 7, 89),
            weights(Filter.NONE, Emulsion.ORTHOCHROMATIC, 3, 44, 53),
            weights(Filter.YELLOW, Emulsion.ORTHOCHROMATIC, 2, 86, 12),
            weights(Filter.ORANGE, Emulsion.ORTHOCHROMATIC, 6, 94, 0),
            weights(Filter.GREEN, Emulsion.ORTHOCHROMATIC, 0, 90, 10),
            weights(Filter.BLUE, Emulsion.ORTHOCHROMATIC, 4, 7, 89),
            weights(Filter.NONE, Emulsion.BLUE_SENSITIVE, 4, 12, 84),
            weights(Filter.YELLOW, Emulsion.BLUE_SENSITIVE, 0, 60, 40),
            weights(Filter.GREEN, Emulsion.BLUE_SENSITIVE, 0, 67, 33),
            weights(Filter.BLUE, Emulsion.BLUE_SENSITIVE, 3, 8, 89));

    private static Map.Entry<Pair, ColourWeights> weights(
            Filter filter, Emulsion emulsion, int red, int green, int blue) {
        return Map.entry(new Pair(filter, emulsion), new ColourWeights(red / 100.0, green / 100.0, blue / 100.0));
    }

    /**
     * What a grey is made of; empty for luminance.
     *
     * @throws Refusal for a filter that keeps the emulsion in the dark, or one before weights of one's own
     */
    public Optional<ColourWeights> weights() {
        if (own.isPresent() && filter != Filter.NONE) {
            throw Refusal.use(
                    "both " + article(filter) + " filter and weights of your own are given; the weights stand in"
                            + " place of filter and emulsion: leave out --through, or name an emulsion");
        }
        if (own.isPresent() || equals(EYE)) {
            return own;
        }
        ColourWeights weights = WEIGHTS.get(new Pair(filter, emulsion));
        if (weights == null) {
            throw Refusal.use(article(emulsion) + " emulsion sees next to nothing through " + article(filter)
                    + " filter: choose --through yellow, green or blue, or --emulsion panchromatic");
        }
        return Optional.of(weights);
    }

    /** In a line, for the outcome; empty for luminance. */
    public Optional<String> words() {
        return weights().map(weights -> {
            String what = own.isPresent()
                    ? "by weights of your own"
                    : "as if photographed"
                            + (emulsion == Emulsion.LUMINANCE ? "" : " on " + article(emulsion) + " emulsion")
                            + (filter == Filter.NONE ? "" : " through " + article(filter) + " filter");
            return what + ": red " + percent(weights.red()) + ", green " + percent(weights.green()) + ", blue "
                    + percent(weights.blue());
        });
    }

    private static String percent(double share) {
        return Refusal.plain(share * 100) + " %";
    }

    /** Its word with an article. */
    public static String article(Enum<?> name) {
        return (name.name().startsWith("O") ? "an " : "a ") + word(name);
    }

    /** As it is typed and said. */
    public static String word(Enum<?> name) {
        return name.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
