package greyground.plate.neighbourhood;

import greyground.plate.Bath;
import greyground.plate.Exposure;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.Ink;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoublePredicate;
import java.util.function.IntBinaryOperator;

/**
 * What the engine printed of a sample of the job's own grain: uniform tones, and tones that meet along a round edge. The same film and
 * conditions give the same sample; it may be kept under its {@link #digest}.
 */
public final class NeighbourhoodSample {
    /** Counts the ways in which samples have been made: raise it with any change that moves a value, for they are kept under it. */
    public static final int ALGORITHM = 3;

    private static final int LEVELS = 16;

    /** Tones within and without a disc, as where art has an edge: chosen by how many patterns of art they know (measured here). */
    private static final double[][] EDGES = {{0, 1}, {1, 0}, {0.1, 0.6}, {0.9, 0.3}, {0, 0.45}, {0.75, 0.05}};

    private static final double DISC = 0.36;

    /** Tones of strokes and of what lies between them: rings of which each is wider than the one within it by this factor. */
    private static final double[][] STROKES = {{0.84, 0}, {0.65, 0}, {0.84, 0.1}, {0.4, 0}, {0, 0.84}, {0.95, 0.05}};

    private static final double WIDER = 1.3;

    private final VirtualPlate plate;
    private final List<Ink> inks;
    private final Neighbourhood disc;
    private final LampView relief;
    private final PatternTally tally;

    private NeighbourhoodSample(
            VirtualPlate plate, List<Ink> inks, LampView relief, Neighbourhood disc, PatternTally tally) {
        this.plate = plate;
        this.inks = List.copyOf(inks);
        this.relief = relief;
        this.disc = disc;
        this.tally = tally;
    }

    /**
     * Runs the engine, on all cores.
     *
     * @param plate of a film of bits, without a sprayed ground
     * @param inks in which it is printed, one or more, the blackest first; they differ from the plate's own in their densities alone
     * @param patches of the job's film
     * @param relief how the copper is shown
     */
    public static NeighbourhoodSample of(VirtualPlate plate, List<Ink> inks, FilmPatches patches, LampView relief) {
        Neighbourhood disc = disc(plate.conditions(), patches.at(0).pitchMicrometres());
        PixelPrints prints = new PixelPrints(plate, inks, disc, relief);
        List<FilmPatch> sample = new ArrayList<>();
        for (int level = 1; level < LEVELS; level++) {
            sample.add(patches.at((double) level / LEVELS));
        }
        for (double[] edge : EDGES) {
            sample.add(drawn(patches.at(edge[0]), patches.at(edge[1]), radius -> radius < DISC));
        }
        for (double[] stroke : STROKES) {
            sample.add(drawn(patches.at(stroke[0]), patches.at(stroke[1]), NeighbourhoodSample::isRing));
        }
        PatternTally all = new PatternTally(inks.size());
        sample.parallelStream().map(patch -> prints.of(patch, 0)).toList().forEach(all::add);
        // As if it had been kept, so that keeping changes nothing.
        return kept(plate, inks, patches, relief, ByteBuffer.wrap(all.bytes())).orElseThrow();
    }

    /** A sample made before for the same plate and film; empty if the bytes are something else. */
    public static Optional<NeighbourhoodSample> kept(
            VirtualPlate plate, List<Ink> inks, FilmPatches patches, LampView relief, ByteBuffer bytes) {
        Neighbourhood disc = disc(plate.conditions(), patches.at(0).pitchMicrometres());
        return PatternTally.of(bytes, inks.size())
                .map(tally -> new NeighbourhoodSample(plate, inks, relief, disc, tally));
    }

    /** For keeping. */
    public byte[] bytes() {
        return tally.bytes();
    }

    /** Names everything that decides a sample but the number of the algorithm. */
    public static String digest(VirtualPlate plate, List<Ink> inks, FilmPatches patches) {
        return plate.digest(patches.name() + "\nneighbourhoods\n" + inks);
    }

    private static boolean isRing(double radius) {
        return Math.floorMod((int) Math.floor(StrictMath.log(radius) / StrictMath.log(WIDER)), 2) == 0;
    }

    /** One tone on some distances from the middle, in shares of the patch, and another on the rest. */
    private static FilmPatch drawn(FilmPatch within, FilmPatch without, DoublePredicate chosen) {
        int width = within.width();
        int height = within.height();
        double side = Math.min(width, height);
        IntBinaryOperator black = (x, y) -> {
            double dx = x + 0.5 - width / 2.0;
            double dy = y + 0.5 - height / 2.0;
            return (chosen.test(Math.sqrt(dx * dx + dy * dy) / side) ? within : without).black(x, y) ? 1 : 0;
        };
        byte[] packed = new byte[(width + 7) / 8 * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                packed[y * ((width + 7) / 8) + (x >> 3)] |= (byte) (black.applyAsInt(x, y) << (7 - (x & 7)));
            }
        }
        return FilmPatch.tile(width, height, within.pitchMicrometres(), packed);
    }

    /**
     * As wide as an edge of the film is felt on the print: light and growth, undercut, and ink that spreads twice (to its own rim, and
     * levelled as far again). Held against the spread of prints within one pattern.
     */
    private static Neighbourhood disc(PlateConditions conditions, double pitch) {
        double light = 0;
        for (Exposure exposure : conditions.exposures()) {
            light = Math.max(
                    light,
                    2 * exposure.blurMicrometres() + Math.abs(exposure.film().spotGrowthMicrometres()));
        }
        double bite = conditions.wells() instanceof Bath bath ? bath.undercutMicrometres() : 0;
        double reach = (light + bite + 2 * conditions.ink().spreadMicrometres()) / pitch;
        return new Neighbourhood(reach * reach <= 10 ? 10 : reach * reach <= 16 ? 16 : 17);
    }

    VirtualPlate plate() {
        return plate;
    }

    List<Ink> inks() {
        return inks;
    }

    Neighbourhood disc() {
        return disc;
    }

    PatternTally tally() {
        return tally;
    }

    /** The same engine, for what the sample does not know; without the copper where nobody looks at it. */
    PixelPrints engine(boolean withRelief) {
        return new PixelPrints(plate, inks, disc, withRelief ? relief : null);
    }
}
