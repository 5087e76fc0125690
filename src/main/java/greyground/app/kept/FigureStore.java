package greyground.app.kept;

import greyground.grain.ThresholdTile;
import greyground.plate.FilmPatches;
import greyground.plate.PlateBlur;
import greyground.plate.TurnSearch;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import java.nio.ByteBuffer;
import java.util.OptionalDouble;
import java.util.function.DoubleSupplier;

/** Keeps single figures of plates, each under the digest of all that decides it, as {@link ResponseStore} keeps responses. */
public final class FigureStore {
    private static final int MAGIC = 0x4754524e;
    private static final int BYTES = Integer.BYTES + Double.BYTES;

    private final CacheFolder cache;

    public FigureStore(CacheFolder cache) {
        this.cache = cache;
    }

    /** Where a plate prints darkest: what {@link TurnSearch#near} finds, kept or computed now. */
    public double turn(VirtualPlate plate, FilmPatches patches, double about) {
        String name =
                plate.digest("turn near " + about + "\n" + patches.name()) + numbers(TurnSearch.ALGORITHM) + ".turn";
        return figure(name, 1, () -> TurnSearch.near(plate, patches, about));
    }

    /**
     * By how many micrometres a plate blurs, kept or computed now.
     *
     * @param film words that differ whenever the film that it is measured on differs
     * @param computed as {@link PlateBlur} does
     */
    public double blur(VirtualPlate plate, String film, DoubleSupplier computed) {
        String name = plate.digest("blur of " + film) + numbers(PlateBlur.ALGORITHM) + ".blur";
        return figure(name, Double.MAX_VALUE, computed);
    }

    /** Of the algorithms that make grain, plate and figure. */
    private static String numbers(int algorithm) {
        return "-" + ThresholdTile.ALGORITHM + "-" + VirtualResponse.ALGORITHM + "-" + algorithm;
    }

    /** A figure of 0 to {@code most}. */
    private double figure(String name, double most, DoubleSupplier computed) {
        OptionalDouble kept = cache.read(name, BYTES).map(FigureStore::figure).orElse(OptionalDouble.empty());
        if (kept.isPresent() && kept.getAsDouble() >= 0 && kept.getAsDouble() <= most) {
            return kept.getAsDouble();
        }
        double figure = computed.getAsDouble();
        cache.keep(
                name, ByteBuffer.allocate(BYTES).putInt(MAGIC).putDouble(figure).array());
        return figure;
    }

    private static OptionalDouble figure(ByteBuffer bytes) {
        return bytes.remaining() == BYTES && bytes.getInt() == MAGIC
                ? OptionalDouble.of(bytes.getDouble())
                : OptionalDouble.empty();
    }
}
