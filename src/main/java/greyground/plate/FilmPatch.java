package greyground.plate;

import greyground.plate.edge.Grid;
import greyground.plate.edge.Rim;
import greyground.quantity.Refusal;
import java.nio.ByteBuffer;

/**
 * A small rectangle of film: bits as the film printer is told to lay them, or optical densities.
 *
 * <p>Wrapped patches are one tile of an endless repeat. A patch cut from a picture is bounded; its place on the plate
 * then says which grains of a sprayed ground fall on it. Nothing changes a patch once it is built.
 */
public final class FilmPatch {
    private final int width;
    private final int height;
    private final double pitchMicrometres;
    private final Rim rim;
    private final double leftMicrometres;
    private final double topMicrometres;
    private final boolean[] black;
    private final float[] density;
    private final int taperMargin;

    private FilmPatch(
            int width,
            int height,
            double pitchMicrometres,
            Rim rim,
            double leftMicrometres,
            double topMicrometres,
            boolean[] black,
            float[] density,
            int taperMargin) {
        this.width = width;
        this.height = height;
        this.pitchMicrometres = pitchMicrometres;
        this.rim = rim;
        this.leftMicrometres = leftMicrometres;
        this.topMicrometres = topMicrometres;
        this.black = black;
        this.density = density;
        this.taperMargin = taperMargin;
    }

    /**
     * A wrapped tile of bits.
     *
     * @param packed row by row, each padded to whole bytes, first pixel in the highest bit, 1 = black
     */
    public static FilmPatch tile(int width, int height, double pitchMicrometres, byte[] packed) {
        return bits(width, height, pitchMicrometres, Rim.WRAPPED, 0, 0, packed);
    }

    /**
     * A bounded cutting of bits.
     *
     * @param leftMicrometres of its left edge, from the plate's left edge
     * @param topMicrometres of its top edge, from the plate's top edge
     * @param packed as for {@link #tile}
     */
    public static FilmPatch cutting(
            int width,
            int height,
            double pitchMicrometres,
            double leftMicrometres,
            double topMicrometres,
            byte[] packed) {
        return bits(width, height, pitchMicrometres, Rim.BOUNDED, leftMicrometres, topMicrometres, packed);
    }

    /**
     * A cutting of continuous-tone film.
     *
     * @param densities optical densities in the lamp's light, row by row, 0 to 6
     */
    public static FilmPatch densities(
            int width,
            int height,
            double pitchMicrometres,
            Rim rim,
            double leftMicrometres,
            double topMicrometres,
            float[] densities) {
        new Grid(width, height, pitchMicrometres, rim).check("continuous-tone film", densities.length);
        for (float value : densities) {
            Refusal.checkRange("film density", value, 0, 6, "", "give optical density in the lamp's own light");
        }
        return new FilmPatch(
                width,
                height,
                pitchMicrometres,
                rim,
                leftMicrometres,
                topMicrometres,
                new boolean[0],
                densities.clone(),
                -1);
    }

    /** Continuous-tone film of one density; it takes the size of the screen that lies with it, and is one pixel by itself. */
    public static FilmPatch uniform(double opticalDensity) {
        return densities(1, 1, 1, Rim.WRAPPED, 0, 0, new float[] {(float) opticalDensity});
    }

    private static FilmPatch bits(
            int width, int height, double pitch, Rim rim, double left, double top, byte[] packed) {
        Grid grid = new Grid(width, height, pitch, rim);
        int bytesPerRow = (width + 7) / 8;
        if (packed.length != bytesPerRow * height) {
            throw Refusal.use("a film patch of " + width + " x " + height + " pixels has " + packed.length
                    + " bytes; it needs " + bytesPerRow * height + ": pad each row to whole bytes");
        }
        boolean[] black = new boolean[grid.area()];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                black[y * width + x] = (packed[y * bytesPerRow + (x >> 3)] & (0x80 >> (x & 7))) != 0;
            }
        }
        return new FilmPatch(width, height, pitch, rim, left, top, black, new float[0], -1);
    }

    /** Pixels across. */
    public int width() {
        return width;
    }

    /** Pixels down. */
    public int height() {
        return height;
    }

    /** Centre-to-centre distance of film pixels. */
    public double pitchMicrometres() {
        return pitchMicrometres;
    }

    /** What lies past the edge. */
    public Rim rim() {
        return rim;
    }

    /** Left edge, from the plate's left edge; 0 for a tile. */
    public double leftMicrometres() {
        return leftMicrometres;
    }

    /** Top edge, from the plate's top edge; 0 for a tile. */
    public double topMicrometres() {
        return topMicrometres;
    }

    /**
     * The same patch, whose tone is taken with weights that fall off towards its sides as a squared cosine (Hann's window): so
     * where a larger film was cut changes its mean little, and seams of a wrapped cutting count for nothing.
     *
     * @param marginPixels of film on each side whose weight is nought besides, 0 to less than half the patch
     */
    public FilmPatch tapered(int marginPixels) {
        if (marginPixels < 0 || 2 * marginPixels >= Math.min(width, height)) {
            throw Refusal.use("the margin of a film patch is " + marginPixels + " pixels; it must lie between 0 and "
                    + (Math.min(width, height) - 1) / 2 + ": take a larger patch");
        }
        return new FilmPatch(
                width, height, pitchMicrometres, rim, leftMicrometres, topMicrometres, black, density, marginPixels);
    }

    /** Whether places weigh less towards the sides. */
    public boolean isTapered() {
        return taperMargin >= 0;
    }

    /** Weight of each of {@code samples} columns that divide the patch evenly, 0 to 1. */
    double[] weightsAcross(int samples) {
        return weights(samples, width);
    }

    /** Weight of each of {@code samples} rows. */
    double[] weightsDown(int samples) {
        return weights(samples, height);
    }

    private double[] weights(int samples, int pixels) {
        double[] weights = new double[samples];
        for (int i = 0; i < samples; i++) {
            double at = ((i + 0.5) * pixels / samples - taperMargin) / (pixels - 2 * taperMargin);
            double sine = at <= 0 || at >= 1 ? 0 : StrictMath.sin(Math.PI * at);
            weights[i] = isTapered() ? sine * sine : 1;
        }
        return weights;
    }

    /** Whether the film carries bits rather than densities. */
    public boolean isBits() {
        return black.length > 0;
    }

    /** Whether the film is one continuous tone without extent of its own. */
    public boolean isUniform() {
        return density.length == 1;
    }

    /** Whether a film pixel of a bit patch is black. */
    public boolean black(int x, int y) {
        return black[y * width + x];
    }

    /** Optical density of a pixel of a continuous-tone patch. */
    public double density(int x, int y) {
        return density[y * width + x];
    }

    /** Share of pixels that are black, weighted if the patch is tapered; of a continuous-tone patch, not a number. */
    public double coverage() {
        if (!isBits()) {
            return Double.NaN;
        }
        double[] across = weightsAcross(width);
        double[] down = weightsDown(height);
        double sum = 0;
        double all = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double weight = across[x] * down[y];
                sum += black(x, y) ? weight : 0;
                all += weight;
            }
        }
        return sum / all;
    }

    /** Names the patch's content: SHA-256 in hexadecimal of its geometry and samples. */
    String digest() {
        int bytesPerSample = isBits() ? 1 : Float.BYTES;
        ByteBuffer bytes = ByteBuffer.allocate(68 + width * height * bytesPerSample);
        bytes.putInt(width).putInt(height).putInt(taperMargin).put((byte) (rim == Rim.WRAPPED ? 1 : 0));
        bytes.putDouble(pitchMicrometres).putDouble(leftMicrometres).putDouble(topMicrometres);
        for (boolean pixel : black) {
            bytes.put((byte) (pixel ? 1 : 0));
        }
        for (float sample : density) {
            bytes.putFloat(sample);
        }
        return PlateConditions.sha256(bytes.array());
    }
}
