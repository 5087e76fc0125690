package greyground.film.compose;

import greyground.film.sheet.FilmRows;
import greyground.raster.Bands;
import greyground.raster.Crew;
import java.io.IOException;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.FutureTask;

/**
 * The rows of a mended film. Mending needs rows far above and below, so it is done in slabs much taller than the bands that
 * writers ask for, and the makers of all threads share them: whoever needs a slab first makes it, and whoever has to wait for
 * one makes the next. The slabs are a function of place, so who makes them is no matter.
 */
final class MendedRows implements FilmRows {
    private static final int SLAB_ROWS = 512;

    /** Enough for makers a slab apart; more would only cost memory. */
    private static final int KEPT = 4;

    private final FilmRows film;
    private final Mend mend;

    /** By the slab's number; guarded by itself. */
    private final Map<Integer, FutureTask<byte[]>> slabs = Collections.synchronizedMap(new TreeMap<>());

    MendedRows(FilmRows film, Mend mend) {
        this.film = film;
        this.mend = mend;
    }

    @Override
    public int width() {
        return film.width();
    }

    @Override
    public int height() {
        return film.height();
    }

    @Override
    public int bitsPerSample() {
        return 1;
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        Bands.Maker<Mend.Part> parts = mend.parts();
        return (first, count) -> {
            byte[] band = new byte[Math.multiplyExact(count, bytesPerRow())];
            int y = first;
            while (y < first + count) {
                int number = y / SLAB_ROWS;
                int inSlab = y - number * SLAB_ROWS;
                int rows = Math.min(first + count - y, SLAB_ROWS - inSlab);
                byte[] slab = slab(parts, number);
                System.arraycopy(slab, inSlab * bytesPerRow(), band, (y - first) * bytesPerRow(), rows * bytesPerRow());
                y += rows;
            }
            return band;
        };
    }

    private byte[] slab(Bands.Maker<Mend.Part> parts, int number) throws IOException {
        FutureTask<byte[]> mine = new FutureTask<>(() -> make(parts, number));
        FutureTask<byte[]> slab = claim(number, mine);
        if (slab == mine) {
            mine.run();
        } else if (!slab.isDone() && (number + 1) * SLAB_ROWS < height()) {
            FutureTask<byte[]> next = new FutureTask<>(() -> make(parts, number + 1));
            if (claim(number + 1, next) == next) {
                next.run();
            }
        }
        return Crew.joined(slab);
    }

    private byte[] make(Bands.Maker<Mend.Part> parts, int number) throws IOException {
        int first = number * SLAB_ROWS;
        return parts.make(first, Math.min(SLAB_ROWS, height() - first)).film();
    }

    /** Puts a slab on the shelf unless it is there; the one there is returned. The farthest from it is forgotten. */
    private FutureTask<byte[]> claim(int number, FutureTask<byte[]> task) {
        synchronized (slabs) {
            FutureTask<byte[]> present = slabs.putIfAbsent(number, task);
            while (slabs.size() > KEPT) {
                TreeMap<Integer, Integer> byDistance = new TreeMap<>();
                slabs.keySet()
                        .forEach(other ->
                                byDistance.put(2 * Math.abs(other - number) + (other > number ? 1 : 0), other));
                slabs.remove(byDistance.lastEntry().getValue());
            }
            return present == null ? task : present;
        }
    }
}
