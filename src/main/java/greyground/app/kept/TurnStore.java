package greyground.app.kept;

import greyground.grain.ThresholdTile;
import greyground.plate.FilmPatches;
import greyground.plate.TurnSearch;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import java.nio.ByteBuffer;
import java.util.OptionalDouble;

/** Keeps where plates print darkest, each under the digest of all that decides it, as {@link ResponseStore} keeps responses. */
public final class TurnStore {
    private static final int MAGIC = 0x4754524e;
    private static final int BYTES = Integer.BYTES + Double.BYTES;

    private final CacheFolder cache;

    public TurnStore(CacheFolder cache) {
        this.cache = cache;
    }

    /** What {@link TurnSearch#near} finds, kept or computed now. */
    public double turn(VirtualPlate plate, FilmPatches patches, double about) {
        String name = plate.digest("turn near " + about + "\n" + patches.name()) + "-" + ThresholdTile.ALGORITHM + "-"
                + VirtualResponse.ALGORITHM + "-" + TurnSearch.ALGORITHM + ".turn";
        OptionalDouble kept = cache.read(name, BYTES).map(TurnStore::turn).orElse(OptionalDouble.empty());
        if (kept.isPresent()) {
            return kept.getAsDouble();
        }
        double turn = TurnSearch.near(plate, patches, about);
        cache.keep(
                name, ByteBuffer.allocate(BYTES).putInt(MAGIC).putDouble(turn).array());
        return turn;
    }

    private static OptionalDouble turn(ByteBuffer bytes) {
        if (bytes.remaining() != BYTES || bytes.getInt() != MAGIC) {
            return OptionalDouble.empty();
        }
        double turn = bytes.getDouble();
        return turn >= 0 && turn <= 1 ? OptionalDouble.of(turn) : OptionalDouble.empty();
    }
}
