package greyground.tone;

import greyground.quantity.Refusal;
import java.util.function.DoubleUnaryOperator;

/**
 * Which print lightness a grey of the art asks for, when the print's range is shorter than the art's. All are monotone and
 * take the art's white to paper and its black to the darkest tone.
 */
public sealed interface RangeMapping {
    /** Keeps visual spacing; a good default for prints (common practice). */
    RangeMapping DEFAULT = new LightnessLinear();

    /**
     * The mapping for one art and one print.
     *
     * @return from linear luminance of the art, 0 to 1, to the print lightness wanted, absolute L* within {@code print}
     */
    DoubleUnaryOperator onto(ArtRange art, PrintRange print);

    /** L* of the art, relative to its white, stretched evenly onto the print's L*. */
    record LightnessLinear() implements RangeMapping {
        @Override
        public DoubleUnaryOperator onto(ArtRange art, PrintRange print) {
            double black = Lightness.ofLuminance(art.relativeBlack());
            return luminance -> {
                double here = Lightness.ofLuminance(art.relative(luminance));
                return between(print.darkestLightness(), print.paperLightness(), (here - black) / (100 - black));
            };
        }
    }

    /**
     * Linear light stretched evenly: black-point compensation (ISO 18619:2015, 4.2.6-4.2.7, formula from memory), whose white
     * here is the paper's.
     */
    record BlackPointCompensated() implements RangeMapping {
        @Override
        public DoubleUnaryOperator onto(ArtRange art, PrintRange print) {
            double black = art.relativeBlack();
            double darkest = Lightness.toLuminance(print.darkestLightness());
            double paper = Lightness.toLuminance(print.paperLightness());
            return luminance -> {
                double share = (art.relative(luminance) - black) / (1 - black);
                return Lightness.ofLuminance(between(darkest, paper, share));
            };
        }
    }

    /**
     * Density stretched evenly; it darkens the middle and suits photographic scales (common practice). Art blacker than
     * {@link #DEEPEST} counts as that black, since the density of no light at all has no end.
     */
    record DensityLinear() implements RangeMapping {
        /** No print is denser (assumed; the top of the usual range of reflection densities). */
        public static final double DEEPEST = 2.2;

        @Override
        public DoubleUnaryOperator onto(ArtRange art, PrintRange print) {
            double floor = StrictMath.pow(10, -DEEPEST);
            double deepest = Math.max(floor, art.relativeBlack());
            double paper = Lightness.toLuminance(print.paperLightness());
            // L* 0 has no density; an L* of a millionth is as black.
            double darkest = Lightness.toLuminance(Math.max(1e-6, print.darkestLightness()));
            // D' = D_paper + (D_darkest - D_paper) D / D_deepest, written in luminances: Y' = Y_paper Y^k.
            double k = StrictMath.log(darkest / paper) / StrictMath.log(deepest);
            return luminance -> {
                double relative = Math.max(floor, art.relative(luminance));
                double lightness = Lightness.ofLuminance(paper * StrictMath.pow(relative, k));
                return Math.max(print.darkestLightness(), Math.min(print.paperLightness(), lightness));
            };
        }
    }

    /** Finds a mapping by its word. */
    static RangeMapping named(String word) {
        return switch (word) {
            case "lightness" -> new LightnessLinear();
            case "black-point" -> new BlackPointCompensated();
            case "density" -> new DensityLinear();
            default ->
                throw Refusal.use(
                        "range mapping \"" + word + "\" is unknown: choose lightness, black-point or density");
        };
    }

    private static double between(double from, double to, double share) {
        // Exact at both ends.
        return share >= 1 ? to : from + (to - from) * share;
    }
}
