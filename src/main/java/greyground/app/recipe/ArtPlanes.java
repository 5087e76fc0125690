package greyground.app.recipe;

import greyground.raster.GreyPlane;
import greyground.raster.PlaneStore;
import java.io.IOException;
import java.nio.file.Path;

/** Planes of art within the program's share of memory: what is larger spills to a file. */
final class ArtPlanes {
    /** Left for film bands, grain and the program itself. */
    private static final long RESERVE_BYTES = 160L << 20;

    private static final long LEAST_BUDGET_BYTES = 48L << 20;

    /** More is never needed to be fast; beyond it planes spill, so that the program stays within 1 GiB. */
    private static final long MOST_BUDGET_BYTES = 640L << 20;

    private ArtPlanes() {}

    /** Puts a plane's rows. */
    @FunctionalInterface
    interface Filling {
        void into(PlaneStore store) throws IOException;
    }

    /** A plane of which the rows are made now, within half of the share, since what it is made from has the other. */
    static GreyPlane stored(int width, int height, Filling rows) throws IOException {
        try (PlaneStore store = PlaneStore.open(width, height, budgetBytes() / 2, spillFolder())) {
            rows.into(store);
            return store.finish();
        }
    }

    /** For the first plane of a page. */
    static long budgetBytes() {
        long free = Runtime.getRuntime().maxMemory() - RESERVE_BYTES;
        return Math.max(LEAST_BUDGET_BYTES, Math.min(MOST_BUDGET_BYTES, free));
    }

    static Path spillFolder() {
        return Path.of(System.getProperty("java.io.tmpdir", "."));
    }
}
