package greyground.simulation;

import greyground.app.recipe.JobPlate;
import greyground.plate.FilmPatch;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.PlateStates;
import greyground.plate.PlateView;
import greyground.plate.VirtualPlate;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * What a hidden workshop really prints from each tone of a film: its lightness, and how it varies from place to place with the grain.
 * Both come from the virtual plate under the secret numbers.
 */
final class ShopTones {
    private static final int FINEST_CELLS = 256;
    private static final double TEXTURE_PIXEL = 9;
    private static final double LAST_COARSE = 0.85;

    private final PlateConditions truth;
    private final JobPlate plate;
    private final VirtualPlate fine;
    private final Map<Double, Double> lightness = new ConcurrentHashMap<>();
    private final Map<String, Double> targets = new ConcurrentHashMap<>();
    private final Map<Double, Texture> textures = new ConcurrentHashMap<>();

    /** Computed as finely as a job is. */
    ShopTones(PlateConditions truth, JobPlate plate) {
        this(truth, plate, plate.plate(truth));
    }

    /** Computed on pixels of another width. */
    ShopTones(PlateConditions truth, JobPlate plate, double widestPixelMicrometres) {
        this(truth, plate, plate.plate(truth, widestPixelMicrometres));
    }

    private ShopTones(PlateConditions truth, JobPlate plate, VirtualPlate fine) {
        this.truth = truth;
        this.plate = plate;
        this.fine = fine;
    }

    /**
     * One piece of a tone.
     *
     * @param side of the square in micrometres
     * @param cells along a side
     * @param shares reflectance of each cell over that of the whole; their mean is 1
     */
    @SuppressWarnings("ArrayRecordComponent")
    record Texture(double side, int cells, float[] shares) {
        /** Mean over a square of {@code size} micrometres, by its nearest cells; wrapped. */
        double at(double x, double y) {
            int column = Math.floorMod((int) Math.floor(x / side * cells), cells);
            int row = Math.floorMod((int) Math.floor(y / side * cells), cells);
            return shares[row * cells + column];
        }
    }

    PlateConditions truth() {
        return truth;
    }

    double paperLightness() {
        return Paper.lightness(Math.pow(10, -truth.paper().density()));
    }

    /** True CIE L* of a film coverage. */
    double lightness(double coverage) {
        return lightness.computeIfAbsent(
                coverage, c -> fine.terms(c, plate.patches().at(c)).lightness());
    }

    /** Lightness of any small tile of film. */
    double lightness(String name, FilmPatch tile) {
        return targets.computeIfAbsent(name, key -> fine.terms(0, tile).lightness());
    }

    /** Cells of about {@code cellMicrometres}. */
    Texture texture(double coverage, double cellMicrometres) {
        Texture finest = textures.computeIfAbsent(coverage, this::finest);
        int cells = Math.max(1, (int) Math.round(finest.side() / cellMicrometres));
        if (cells >= finest.cells()) {
            return finest;
        }
        float[] shares = new float[cells * cells];
        double[] counts = new double[cells * cells];
        for (int y = 0; y < finest.cells(); y++) {
            for (int x = 0; x < finest.cells(); x++) {
                int at = y * cells / finest.cells() * cells + x * cells / finest.cells();
                shares[at] += finest.shares()[y * finest.cells() + x];
                counts[at]++;
            }
        }
        for (int i = 0; i < shares.length; i++) {
            shares[i] /= (float) counts[i];
        }
        return new Texture(finest.side(), cells, shares);
    }

    private Texture finest(double coverage) {
        FilmPatch film = plate.patches().at(coverage);
        // Past the darkest tone a coarse plate may lose the last lands.
        VirtualPlate grown = coverage > LAST_COARSE ? fine : plate.plate(truth, TEXTURE_PIXEL);
        PlateStates states = grown.states(film);
        float[] roots = PlateView.printRoot().of(truth, states);
        int width = states.grid().width();
        int height = states.grid().height();
        int cells = Math.min(FINEST_CELLS, Math.min(width, height));
        float[] shares = new float[cells * cells];
        int[] counts = new int[cells * cells];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int at = y * cells / height * cells + x * cells / width;
                shares[at] += roots[y * width + x];
                counts[at]++;
            }
        }
        double mean = 0;
        for (int i = 0; i < shares.length; i++) {
            shares[i] = (float) Math.pow(shares[i] / counts[i], truth.paper().opticalGain());
            mean += shares[i] / shares.length;
        }
        for (int i = 0; i < shares.length; i++) {
            shares[i] /= (float) mean;
        }
        double side = film.isBits()
                ? film.width() * film.pitchMicrometres()
                : width * states.grid().pitchMicrometres();
        return new Texture(side, cells, shares);
    }

    /** Black and clear lines, or dots or holes on a square lattice, as small tiles of film. */
    static FilmPatch tile(int width, int height, double pitch, java.util.function.BiPredicate<Integer, Integer> black) {
        int bytesPerRow = (width + 7) / 8;
        byte[] packed = new byte[bytesPerRow * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                if (black.test(x, y)) {
                    packed[y * bytesPerRow + (x >> 3)] |= (byte) (0x80 >> (x & 7));
                }
            }
        }
        return FilmPatch.tile(width, height, pitch, packed);
    }
}
