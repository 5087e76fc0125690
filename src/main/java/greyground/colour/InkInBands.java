package greyground.colour;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.DoubleStream;

/**
 * How dense an ink's film is over paper, band by band: D = Dinf (1 - exp(-m y)) (Tollenaar and Ernst 1961/62, from memory) with one Dinf and an m
 * for each band. That inks share one Dinf is assumed: it is where light from the ink's own surface hides what lies below.
 *
 * <p>Thin films are purer than thick ones, as the bands' densities part the more the thinner the film.
 */
public final class InkInBands {
    /** Film of the colour patch that an ink is known by. */
    public static final Range FILM =
            new Range(0.5, 60, Unit.MICROMETRES, "10 \u00b5m is about what a full tone of a plate lays down");

    /** Nearer to the greatest density a film's thickness can't be told. */
    private static final double MOST_SHARE = 0.98;

    private final double greatestDensity;
    private final double[] strengths;

    private InkInBands(double greatestDensity, double[] strengths) {
        this.greatestDensity = greatestDensity;
        this.strengths = strengths;
    }

    /**
     * An ink that takes all light alike.
     *
     * @param greatestDensity above 0
     * @param strengthPerMicrometre m, above 0
     */
    public static InkInBands grey(double greatestDensity, double strengthPerMicrometre) {
        double[] strengths = new double[SmoothSpectrum.BANDS];
        Arrays.fill(strengths, strengthPerMicrometre);
        return new InkInBands(greatestDensity, strengths);
    }

    /**
     * An ink by the colour of one patch.
     *
     * @param name for refusals, such as "ink blue"
     * @param paper spectrum of the bare paper
     * @param patch colour of the film on it
     * @param filmMicrometres thickness of that film
     * @throws Refusal where no layer on this paper has that colour, or it is too dark for the greatest density
     */
    public static InkInBands ofPatch(
            String name, double[] paper, Xyz patch, double filmMicrometres, double greatestDensity) {
        FILM.check(name + "'s film", filmMicrometres);
        Optional<double[]> shares = SmoothSpectrum.over(paper, patch);
        if (shares.isEmpty()) {
            throw Refusal.use(
                    name + " has a colour that no ink has on this paper, lighter than the paper or purer than any film:"
                            + " measure the patch and the paper in the same light");
        }
        double[] strengths = new double[SmoothSpectrum.BANDS];
        for (int band = 0; band < strengths.length; band++) {
            double density = -StrictMath.log10(shares.get()[band]);
            if (density >= MOST_SHARE * greatestDensity) {
                throw Refusal.use(name + " has a density of " + Refusal.plain(density)
                        + " over the paper in one band of light; ink.saturationDensity of the workshop is "
                        + Refusal.plain(greatestDensity)
                        + ": measure a thinner film, or the workshop's darkest black anew");
            }
            strengths[band] = -StrictMath.log1p(-density / greatestDensity) / filmMicrometres;
        }
        return new InkInBands(greatestDensity, strengths);
    }

    /** The same ink with a share of its strength, as thinned with extender (in proportion: assumed). */
    public InkInBands thinned(double share) {
        return share == 1
                ? this
                : new InkInBands(
                        greatestDensity,
                        DoubleStream.of(strengths).map(m -> m * share).toArray());
    }

    /** m of a band, in 1/µm, 0 or more. */
    public double strengthPerMicrometre(int band) {
        return strengths[band];
    }

    /** The band that it takes most from. */
    int strongestBand() {
        int strongest = 0;
        for (int band = 1; band < strengths.length; band++) {
            strongest = strengths[band] > strengths[strongest] ? band : strongest;
        }
        return strongest;
    }

    /** m of the band that it takes most from: as black as this its films are in the light of the ink's complement. */
    public double strongestPerMicrometre() {
        return DoubleStream.of(strengths).max().orElseThrow();
    }

    /** Whether it takes all light alike. */
    boolean isGrey() {
        return Arrays.stream(strengths).allMatch(m -> m == strengths[0]);
    }

    /** Density over paper of an even film in a band. */
    public double density(int band, double filmMicrometres) {
        return greatestDensity * -StrictMath.expm1(-strengths[band] * filmMicrometres);
    }

    /** Spectrum of an even film on paper. */
    public double[] onPaper(double[] paper, double filmMicrometres) {
        double[] light = new double[paper.length];
        for (int band = 0; band < light.length; band++) {
            light[band] = paper[band] * StrictMath.pow(10, -density(band, filmMicrometres));
        }
        return light;
    }
}
