package greyground.film.compose;

import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Sheet;
import greyground.plate.inspect.BareCopper;
import greyground.plate.inspect.FilmLimits;
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.BitPlane;
import greyground.raster.Crew;
import greyground.raster.DiscReach;
import java.io.IOException;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.FutureTask;

/**
 * Makes blacks solid where the plate can hold them. The curve gives even the art's black a grain, since a wide solid would be
 * wiped out; but a stroke needs none, and is the crisper without.
 *
 * <p>Wherever the art wishes for black ({@link WishedBlack}) the film becomes solid, but for the places where the pad would
 * then come down half the depth. A stroke just narrower than the critical width is no open bite yet, but its middle holds next to
 * no ink and prints pale; at half the depth, 1/sqrt 2 of that width, the middle of a usual plate prints within two or three
 * L* of its darkest grain (reckoned with the virtual plate at the assumed workshop). Within the pad's reach of such places
 * the film keeps its grain, except along the edge of the black, where a rim stays solid: a third of what the pad bridges, so
 * that two thirds are left for the way from the rim to the first land of the grain.
 *
 * <p>Should the pad reach the floor even so, where it would not have done on the film as it was, everything about that place
 * goes back to grain: so mending never makes an open bite. That follows from more black never making more land.
 *
 * <p>A function of place, like the films it works on; immutable and shared by all threads.
 */
public final class Mend {
    private static final double RIM = 1.0 / 3;

    /** Share of the depth that the pad may come down into a solid black. */
    private static final double MOST_SAG = 0.5;

    private final Sheet sheet;
    private final FilmRows film;
    private final FilmRows wished;
    private final BareCopper copper;
    private final BareCopper shallow;
    private final double rim;
    private final double back;
    private final int halo;

    /**
     * A mend of a film.
     *
     * @param sheet where everything lies on the film
     * @param film of hard dots
     * @param wished a film of the same size, black where the art wishes for black: {@link WishedBlack}
     */
    public Mend(Sheet sheet, FilmRows film, FilmRows wished, FilmLimits limits) {
        if (film.bitsPerSample() != 1 || wished.width() != film.width() || wished.height() != film.height()) {
            throw Refusal.use("a film of " + film.bitsPerSample()
                    + " bits can't be mended; it must have 1: give the job a grain or a halftone");
        }
        double pitchMicrometres = sheet.pixels().pitchMicrometres();
        this.sheet = sheet;
        this.film = film;
        this.wished = wished;
        this.copper = new BareCopper(limits, pitchMicrometres);
        this.shallow = new BareCopper(limits.forDepthShare(MOST_SAG), pitchMicrometres);
        double pad = copper.padRadiusPixels();
        this.rim = Math.max(1, RIM * limits.widestBlackMicrometres() / pitchMicrometres) + 0.5;
        // Which lands live is decided within a square, so its corner counts.
        this.back = pad + Math.sqrt(2) * copper.reach() + 1;
        int reach = copper.reach();
        this.halo = (int) Math.ceil(back) + 3 * (int) Math.ceil(pad) + 2 * reach + 4;
    }

    /**
     * Some rows of a mended film.
     *
     * @param film the mended rows, packed
     * @param madeSolid black now, clear before; a window about the image
     * @param leftToGrain wished for black and kept in grain; the same window
     * @param firstColumn film column that is the windows' column 0
     */
    @SuppressWarnings("ArrayRecordComponent") // handed on once, never compared
    record Part(byte[] film, BitPlane madeSolid, BitPlane leftToGrain, int firstColumn) {}

    Sheet sheet() {
        return sheet;
    }

    /** How far from a pixel the film decides what becomes of it, in film pixels. */
    public int reachPixels() {
        return halo;
    }

    public FilmRows rows() {
        return new MendedRows(film, this);
    }

    /** A new maker of mended rows, for one thread. */
    Bands.Maker<Part> parts() {
        FilmWindow films = new FilmWindow(film, sheet.image(), halo);
        FilmWindow wishes = new FilmWindow(wished, sheet.image(), halo);
        return (first, count) -> part(films, wishes, first, count);
    }

    private Part part(FilmWindow films, FilmWindow wishes, int first, int count) throws IOException {
        BitPlane wish = wishes.rows(first, count);
        if (wish.isEmpty()) {
            BitPlane none = new BitPlane(wish.wordsPerRow(), count);
            return new Part(
                    films.packed(films.rows(first, count).rows(halo, count), first), none, none, films.firstColumn());
        }
        BitPlane plain = films.rows(first, count);
        BitPlane solid = solid(plain, wish);
        BitPlane mended = plain.with(solid).rows(halo, count);
        return new Part(
                films.packed(mended, first),
                mended.without(plain.rows(halo, count)),
                wish.without(solid).rows(halo, count),
                films.firstColumn());
    }

    private BitPlane solid(BitPlane plain, BitPlane wish) {
        BitPlane sunk = wipedOut(plain.with(wish), shallow);
        if (sunk.isEmpty()) {
            return wish;
        }
        BitPlane inner =
                DiscReach.within(sunk, shallow.padRadiusPixels()).without(DiscReach.within(wish.turned(), rim));
        BitPlane solid = wish.without(inner);
        BitPlane still = wipedOut(plain.with(solid), copper);
        if (still.isEmpty()) {
            return solid;
        }
        BitPlane fresh = still.without(wipedOut(plain, copper));
        return fresh.isEmpty() ? solid : solid.without(DiscReach.within(fresh, back));
    }

    private static BitPlane wipedOut(BitPlane black, BareCopper where) {
        return where.wipedOut(where.lands(black), 0, black.rows());
    }

    /**
     * The rows of a mended film. Mending needs rows far above and below, so it is done in slabs much taller than the bands that
     * writers ask for, and the makers of all threads share them: whoever needs a slab first makes it, and whoever has to wait for
     * one makes the next. The slabs are a function of place, so who makes them is no matter.
     */
    private static final class MendedRows implements FilmRows {
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
                    System.arraycopy(
                            slab, inSlab * bytesPerRow(), band, (y - first) * bytesPerRow(), rows * bytesPerRow());
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
}
