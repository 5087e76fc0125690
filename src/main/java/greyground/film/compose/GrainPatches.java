package greyground.film.compose;

import greyground.grain.Grain;
import greyground.grain.ThresholdTile;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.quantity.FilmPixels;
import greyground.quantity.RecordWords;
import greyground.quantity.Resolution;
import java.util.function.DoubleUnaryOperator;

/**
 * Uniform tones of a film's own dots, for the virtual plate: a piece of the very thresholds that the film is screened with.
 *
 * <p>A tile no larger than the piece is taken whole and repeats as it does on the film. From a larger one a square is cut and
 * wrapped; since its opposite sides don't fit, and a regular screen is cut anyhow, it is tapered.
 */
public record GrainPatches(
        ThresholdTile tile,
        int width,
        int height,
        boolean whole,
        double spacingPixels,
        double pitchMicrometres,
        String name)
        implements FilmPatches {
    /** Dots across a piece: a tone's lightness then varies by 0.1 to 0.4 L* from piece to piece (measured, docs/virtual-plate.md). */
    private static final int SPACINGS = 12;

    /**
     * The tones of a grain or halftone.
     *
     * @param tile that {@code grain} gives at {@code resolution}
     */
    public static GrainPatches of(Grain grain, ThresholdTile tile, Resolution resolution) {
        return of(grain, tile, FilmPixels.of(resolution));
    }

    /**
     * The same as a printer prints it: its dots larger or smaller by as much as its pixels are.
     *
     * @param tile that {@code grain} gives at the pixels' resolution
     */
    public static GrainPatches of(Grain grain, ThresholdTile tile, FilmPixels pixels) {
        double spacing = spacingMicrometres(grain) / pixels.resolution().pitchMicrometres();
        int side = (int) Math.ceil(SPACINGS * spacing);
        boolean whole = tile.width() <= side && tile.height() <= side;
        return new GrainPatches(
                tile,
                whole ? tile.width() : side,
                whole ? tile.height() : side,
                whole,
                spacing,
                pixels.pitchMicrometres(),
                RecordWords.of(grain) + " at " + pixels);
    }

    /** Mean distance of the dots of a grain or rows of a halftone, in micrometres; 0 for continuous tone. */
    public static double spacingMicrometres(Grain grain) {
        if (grain instanceof Grain.Stochastic stochastic) {
            return stochastic.spacingMicrometres();
        }
        return grain instanceof Grain.Halftone halftone ? halftone.ruling().pitchMicrometres() : 0;
    }

    @Override
    public FilmPatch at(double coverage) {
        FilmPatch patch = piece(width, height, share -> coverage);
        return whole ? patch : patch.tapered(0);
    }

    /**
     * A wider piece whose tone changes across it, wrapped and tapered.
     *
     * @param spacings across, 1 to 100, of the dots; it is twelve high
     * @param coverage by the share of its width, 0 to 1
     */
    public FilmPatch across(int spacings, DoubleUnaryOperator coverage) {
        int side = (int) Math.ceil(spacings * spacingPixels);
        return piece(side, (int) Math.ceil(SPACINGS * spacingPixels), coverage).tapered(0);
    }

    private FilmPatch piece(int across, int down, DoubleUnaryOperator coverage) {
        int bytesPerRow = (across + 7) / 8;
        byte[] packed = new byte[bytesPerRow * down];
        for (int x = 0; x < across; x++) {
            int wanted = (int) Math.round(coverage.applyAsDouble((x + 0.5) / across) * 65_535);
            for (int y = 0; y < down; y++) {
                if (wanted > tile.threshold(x, y)) {
                    packed[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        return FilmPatch.tile(across, down, pitchMicrometres, packed);
    }
}
