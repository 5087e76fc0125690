package greyground.app.kept;

import greyground.grain.ThresholdTile;
import greyground.plate.FilmPatches;
import greyground.plate.ToneTerms;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Keeps responses of the virtual plate, each under the digest of all that decides it: conditions, films, and the numbers of the
 * algorithms that make grain and plate. So one workshop and grain wait once, and a change in code never meets a response of before.
 */
public final class ResponseStore {
    private static final int MAGIC = 0x47525350;
    private static final int HEAD_BYTES = 8;
    private static final int NUMBERS = 13;
    private static final int MOST_LEVELS = 2048;

    private final CacheFolder cache;

    private final int algorithm;

    public ResponseStore(CacheFolder cache) {
        this(cache, VirtualResponse.ALGORITHM);
    }

    /** A store of responses that an algorithm of this number computes. */
    ResponseStore(CacheFolder cache, int algorithm) {
        this.cache = cache;
        this.algorithm = algorithm;
    }

    /** The response of a plate, kept or computed now. */
    public VirtualResponse response(VirtualPlate plate, FilmPatches patches) {
        String digest = VirtualResponse.digest(plate, patches, VirtualResponse.FEWEST_LEVELS);
        String name = digest + "-" + ThresholdTile.ALGORITHM + "-" + algorithm + ".response";
        Optional<List<ToneTerms>> kept =
                cache.read(name, HEAD_BYTES + 8L * NUMBERS * MOST_LEVELS).flatMap(ResponseStore::levels);
        if (kept.isPresent()) {
            return VirtualResponse.kept(plate, patches, VirtualResponse.FEWEST_LEVELS, kept.get());
        }
        VirtualResponse computed = VirtualResponse.of(plate, patches);
        cache.keep(name, bytes(computed.levels()));
        return computed;
    }

    private static Optional<List<ToneTerms>> levels(ByteBuffer bytes) {
        if (bytes.remaining() < HEAD_BYTES || bytes.getInt() != MAGIC) {
            return Optional.empty();
        }
        int count = bytes.getInt();
        if (count < 2 || count > MOST_LEVELS || bytes.remaining() != 8 * NUMBERS * count) {
            return Optional.empty();
        }
        List<ToneTerms> levels = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            levels.add(new ToneTerms(
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble(),
                    bytes.getDouble()));
        }
        return Optional.of(levels);
    }

    private static byte[] bytes(List<ToneTerms> levels) {
        ByteBuffer bytes = ByteBuffer.allocate(HEAD_BYTES + 8 * NUMBERS * levels.size());
        bytes.putInt(MAGIC).putInt(levels.size());
        for (ToneTerms terms : levels) {
            bytes.putDouble(terms.coverage())
                    .putDouble(terms.openedByLight())
                    .putDouble(terms.openShare())
                    .putDouble(terms.landLeft())
                    .putDouble(terms.meanDepthMicrometres())
                    .putDouble(terms.inkVolumeMicrometres())
                    .putDouble(terms.inkHeldShare())
                    .putDouble(terms.printedShare())
                    .putDouble(terms.inkFilmMicrometres())
                    .putDouble(terms.solidDensity())
                    .putDouble(terms.density())
                    .putDouble(terms.lightness())
                    .putDouble(terms.lightnessError());
        }
        return bytes.array();
    }
}
