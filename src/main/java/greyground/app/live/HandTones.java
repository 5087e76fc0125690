package greyground.app.live;

import greyground.app.recipe.FilmRecipe;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import greyground.tone.ToneWish;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What the hand has set of the art's tones, to be drawn over its histogram and pulled there.
 *
 * @param white L* of the art that prints as bare paper
 * @param black L* of the art that prints darkest, below white
 * @param curve wished tones, 0 at black to 100 at white
 * @param points that the curve was told to go through, on the same scale, from dark to light
 */
public record HandTones(double white, double black, List<ToneCurves.Point> curve, List<ToneCurves.Point> points) {
    static HandTones of(FilmRecipe recipe) {
        ArtRange range = recipe.range();
        ToneWish wish = recipe.job().art().hand().wish();
        return new HandTones(
                Lightness.ofLuminance(range.white()),
                Lightness.ofLuminance(range.black()),
                IntStream.rangeClosed(0, 100)
                        .mapToObj(share ->
                                new ToneCurves.Point(share, 100 * wish.curve().applyAsDouble(share / 100.0)))
                        .toList(),
                wish.points().stream()
                        .map(point -> new ToneCurves.Point(point.from(), point.to()))
                        .toList());
    }

    /** Where a tone of the art lies between black, 0, and white, 100, as the curve counts; beyond them below 0 or above 100. */
    public double share(double artLightness) {
        double luminance = Lightness.toLuminance(artLightness) / Lightness.toLuminance(white);
        double relativeBlack = Lightness.ofLuminance(Lightness.toLuminance(black) / Lightness.toLuminance(white));
        return 100 * (Lightness.ofLuminance(luminance) - relativeBlack) / (100 - relativeBlack);
    }

    /** The tone of the art that lies so far between black and white; undoes {@link #share}. */
    public double artLightness(double share) {
        double relativeBlack = Lightness.ofLuminance(Lightness.toLuminance(black) / Lightness.toLuminance(white));
        double relative = relativeBlack + share / 100 * (100 - relativeBlack);
        return Lightness.ofLuminance(Lightness.toLuminance(relative) * Lightness.toLuminance(white));
    }

    /** Linear luminance of a tone of the art, 0 to 1. */
    public static double luminance(double artLightness) {
        return Lightness.toLuminance(Math.max(0, Math.min(100, artLightness)));
    }
}
