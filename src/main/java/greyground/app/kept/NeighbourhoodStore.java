package greyground.app.kept;

import greyground.grain.ThresholdTile;
import greyground.plate.FilmPatches;
import greyground.plate.Ink;
import greyground.plate.VirtualPlate;
import greyground.plate.VirtualResponse;
import greyground.plate.neighbourhood.LampView;
import greyground.plate.neighbourhood.NeighbourhoodSample;
import java.util.List;
import java.util.Optional;

/**
 * Keeps samples of what neighbourhoods of a job's grain print, each under the digest of all that decides it and the numbers of the
 * algorithms that make grain, plate and sample. Whole plates are read by them; what one film teaches besides is not kept.
 */
public final class NeighbourhoodStore {
    private static final long MOST_BYTES = 1L << 28;

    private final CacheFolder cache;
    private final int algorithm;

    public NeighbourhoodStore(CacheFolder cache) {
        this(cache, NeighbourhoodSample.ALGORITHM);
    }

    /** A store of samples that an algorithm of this number makes. */
    NeighbourhoodStore(CacheFolder cache, int algorithm) {
        this.cache = cache;
        this.algorithm = algorithm;
    }

    /** The sample of a plate in some inks and its film, kept or made now. */
    public NeighbourhoodSample sample(VirtualPlate plate, List<Ink> inks, FilmPatches patches, LampView relief) {
        String name = NeighbourhoodSample.digest(plate, inks, patches) + "-" + ThresholdTile.ALGORITHM + "-"
                + VirtualResponse.ALGORITHM + "-" + algorithm + ".neighbourhoods";
        Optional<NeighbourhoodSample> kept = cache.read(name, MOST_BYTES)
                .flatMap(bytes -> NeighbourhoodSample.kept(plate, inks, patches, relief, bytes));
        if (kept.isPresent()) {
            return kept.get();
        }
        NeighbourhoodSample made = NeighbourhoodSample.of(plate, inks, patches, relief);
        cache.keep(name, made.bytes());
        return made;
    }
}
