package greyground.simulation;

import greyground.fit.FitParameter;
import java.util.Random;

/**
 * An invented workshop whose physics are not the virtual plate's: a model of mean tones that shares no code with it.
 *
 * <p>Edges: fine openings grow less, by an exponential of their chord. Copper: walls between a straight taper and a step,
 * {@code (z/h)^q + (d/u)^q = 1}, undercut that grows or falls with the bare share about it, and a bath that bites open places less deep.
 * Wiping: a well keeps {@code 1 / (1 + (w / wc)^p)} of its ink, w its mean chord. Ink: three laws of density over film, none of them
 * Tollenaar and Ernst's. Paper: a share s of the light wanders freely and the rest comes back where it entered,
 * {@code R = Rp ((1 - s) mean t + s (mean sqrt t)^2)}. The ranges are invented; those of numbers that both models have are those of
 * {@link HiddenWorkshop}.
 */
final class ForeignShop {
    private static final double[] WALLS = {1, 1.4, 3, 4};
    private static final int LAYERS = 8;
    private static final double DEEP_FILM = 1000;

    /** Laws of density over ink film. */
    enum InkLaw {
        /** Slower and slower without an exponential: {@code Dinf y / (b^2 + y^2)^(1/2)}. */
        ROOT,
        /** A hyperbolic tangent. */
        TANGENT,
        /** Stretched: {@code Dinf (1 - exp(-(m y)^0.85))}. */
        STRETCHED
    }

    /**
     * What differs from plate to plate, and from field to field.
     *
     * @param depth over the shop's usual depth
     * @param growth um more at every edge
     * @param density over the usual density
     * @param wiping over the usual critical width
     * @param tone over the usual plate tone
     */
    record Plate(double depth, double growth, double density, double wiping, double tone) {}

    final long seed;
    final double depth;
    final double growth;
    final double fine;
    final double etchFactor;
    final double wall;
    final double sideways;
    final double loading;
    final double padRadiusMillimetres;
    final double wipingPower;
    final double plateTone;
    final InkLaw law;
    final double greatestDensity;
    final double strength;
    final double transfer;
    final double spread;
    final double wandering;
    final double paperDensity;
    private final double[] unsteady;

    private ForeignShop(long seed, Random random) {
        this.seed = seed;
        this.depth = between(random, 28, 46);
        this.growth = between(random, -2, 10);
        this.fine = between(random, 0, 4);
        this.etchFactor = ratio(random, 1.35, 3);
        this.wall = WALLS[random.nextInt(WALLS.length)];
        this.sideways = between(random, -0.3, 0.3);
        this.loading = between(random, 0, 0.2);
        this.padRadiusMillimetres = ratio(random, 0.6, 3.7);
        this.wipingPower = between(random, 2, 4);
        this.plateTone = between(random, 0, 0.4);
        this.law = InkLaw.values()[random.nextInt(InkLaw.values().length)];
        this.greatestDensity = between(random, 1.4, 1.95);
        this.strength = ratio(random, 0.09, 0.27);
        this.transfer = between(random, 0.65, 0.95);
        this.spread = between(random, 5, 16);
        this.wandering = between(random, 0.3, 1);
        this.paperDensity = between(random, 0.04, 0.1);
        this.unsteady = new double[] {
            between(random, 0.02, 0.06),
            between(random, 0.3, 1.5),
            between(random, 0.01, 0.04),
            between(random, 0.02, 0.1),
            between(random, 0.05, 0.25)
        };
    }

    static ForeignShop of(long seed) {
        return new ForeignShop(seed, new Random(seed * 15_485_863 + 29));
    }

    private static double between(Random random, double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    private static double ratio(Random random, double least, double most) {
        return least * Math.pow(most / least, random.nextDouble());
    }

    /** One of its plates, bitten, inked and wiped. */
    Plate plate(Random random) {
        return new Plate(
                1 + unsteady[0] * random.nextGaussian(),
                unsteady[1] * random.nextGaussian(),
                1 + unsteady[2] * random.nextGaussian(),
                Math.max(0.5, 1 + unsteady[3] * random.nextGaussian()),
                Math.max(0, 1 + unsteady[4] * random.nextGaussian()));
    }

    /** A place of a plate: what bath and wiping do differs a little from place to place. */
    Plate place(Plate of, Random random) {
        return new Plate(
                of.depth() * (1 + unsteady[0] / 4 * random.nextGaussian()),
                of.growth() + unsteady[1] / 4 * random.nextGaussian(),
                of.density(),
                of.wiping() * (1 + unsteady[3] / 4 * random.nextGaussian()),
                of.tone() * Math.max(0, 1 + unsteady[4] / 4 * random.nextGaussian()));
    }

    /** Reflectance of a tone, absolute. */
    double reflectance(ForeignFilm.Black black, Plate plate) {
        double chord = black.chord(0);
        double open = growth + plate.growth() - fine * Math.exp(-chord / 60);
        double bare = black.share(open);
        double deep = depth * plate.depth() * (1 + loading * (0.5 - bare));
        double under = deep / etchFactor * (1 + sideways * (2 * bare - 1));
        double volume = 0;
        for (int layer = 0; layer < LAYERS; layer++) {
            double down = (layer + 0.5) / LAYERS;
            volume += deep / LAYERS * black.share(open + under * Math.pow(1 - Math.pow(down, wall), 1 / wall));
        }
        double critical = Math.sqrt(8 * padRadiusMillimetres * 1000 * deep) * plate.wiping();
        double kept = volume / (1 + Math.pow(black.chord(open + under) / critical, wipingPower));
        double printed = black.share(open + under + spread);
        double film = printed > 0 ? transfer * kept / printed : 0;
        double tone = transfer * plateTone * plate.tone();
        double inked = Math.pow(10, -plate.density() * density(film + tone));
        double clear = Math.pow(10, -plate.density() * density(tone));
        double straight = printed * inked + (1 - printed) * clear;
        double roots = printed * Math.sqrt(inked) + (1 - printed) * Math.sqrt(clear);
        return Math.pow(10, -paperDensity) * ((1 - wandering) * straight + wandering * roots * roots);
    }

    /** Density over paper of an ink film. */
    double density(double film) {
        double reach = strength * film;
        return greatestDensity
                * switch (law) {
                    case ROOT -> reach / Math.hypot(1, reach);
                    case TANGENT -> Math.tanh(reach);
                    case STRETCHED -> 1 - Math.exp(-Math.pow(reach, 0.85));
                };
    }

    /** What a number of the virtual plate is in this shop, as far as a lesson may tell it; not a number where it has none. */
    double truth(FitParameter number) {
        return Math.max(number.allowed().least(), Math.min(number.allowed().most(), own(number)));
    }

    private double own(FitParameter number) {
        return switch (number) {
            // Of openings as wide as a grain's middle tones.
            case EDGE_SHIFT -> growth - fine * Math.exp(-150.0 / 60);
            case ETCH_FACTOR -> etchFactor;
            // As a bar gauge has it: bars narrower than the square root of 8 r h hold more than half of their ink.
            case PAD_RADIUS -> padRadiusMillimetres;
            case PLATE_TONE -> plateTone;
            case INK_SATURATION -> density(DEEP_FILM);
            case OPTICAL_GAIN -> gain();
            case INK_STRENGTH, SMALLEST_OPENING, SMALLEST_LAND -> Double.NaN;
        };
    }

    /** The n that gives half-covered paper the same light, under a film of 12 um. */
    private double gain() {
        double ink = Math.pow(10, -density(12));
        double roots = 0.5 + 0.5 * Math.sqrt(ink);
        double wanted = (1 - wandering) * (0.5 + 0.5 * ink) + wandering * roots * roots;
        double low = 1;
        double high = 4;
        for (int i = 0; i < 50; i++) {
            double n = (low + high) / 2;
            boolean lighter = Math.pow(0.5 + 0.5 * Math.pow(ink, 1 / n), n) > wanted;
            low = lighter ? n : low;
            high = lighter ? high : n;
        }
        return low;
    }

    @Override
    public String toString() {
        return String.format(
                java.util.Locale.ROOT,
                "%d depth %.0f growth %.1f F %.2f wall %.1f sideways %.2f loading %.2f pad %.2f power %.1f tone %.2f %s"
                        + " D %.2f m %.2f eta %.2f spread %.0f s %.2f",
                seed,
                depth,
                growth,
                etchFactor,
                wall,
                sideways,
                loading,
                padRadiusMillimetres,
                wipingPower,
                plateTone,
                law,
                greatestDensity,
                strength,
                transfer,
                spread,
                wandering);
    }
}
