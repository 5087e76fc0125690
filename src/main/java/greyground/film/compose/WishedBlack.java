package greyground.film.compose;

import greyground.film.job.ArtOnPlate;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.SheetLayout;
import greyground.raster.Bands;
import greyground.raster.BitPlane;
import greyground.raster.DiscReach;
import greyground.raster.PackedRows;
import greyground.raster.PixelRect;
import greyground.tone.ArtRange;
import greyground.tone.ToneCurve;
import java.util.Arrays;
import java.util.Optional;

/**
 * Where the art wishes for black: black on the film there, clear elsewhere.
 *
 * <p>That is wherever the curve gives its highest coverage, the core. Of art that is enlarged the core is told by its own
 * pixels, since enlarging rings: beside every bright edge it makes a line darker than the art. And near the core, within a
 * pixel and a half of the art (a drawn edge takes one, and the ringing reaches a little farther), it is whatever belongs to
 * the same stroke:
 *
 * <ul>
 *   <li>what gets at least half the core's coverage;
 *   <li>up to half way from the art's black to its white in light, but only where white is as near. There the grey is a pixel
 *       of the art that an edge runs through, and half the light is where it runs; beside a grey tone it would be the tone.
 * </ul>
 *
 * @param edge how far from the core a stroke may reach, in film pixels
 * @param outlined where the art is left whole; empty for everywhere
 */
public record WishedBlack(
        PixelRect image,
        FilmRows core,
        FilmRows dark,
        FilmRows half,
        FilmRows grey,
        double edge,
        Optional<Outlined> outlined)
        implements FilmRows {
    private static final double EDGE_ART_PIXELS = 1.5;

    /** What is lighter than this, from the art's black to its white in light, counts as white beside an edge (assumed). */
    private static final double LIGHT = 0.75;

    /**
     * For a film that is to be composed of the same.
     *
     * @param layout not mirrored
     * @param content placed on that layout
     * @param range of the art's luminance
     * @param mirrored as for {@link FilmComposer#screened}
     */
    public static WishedBlack of(
            SheetLayout layout, FilmContent.Picture content, ToneCurve curve, ArtRange range, boolean mirrored) {
        double span = range.white() - range.black();
        ArtOnPlate placing = content.placing();
        double artPixel = 1 / Math.min(placing.across().scale(), placing.down().scale());
        int most = curve.coverage(0);
        int blackest = lastWith(curve, most);
        FilmContent.Picture seen = mirrored ? (FilmContent.Picture) content.mirrored(layout.width()) : content;
        return new WishedBlack(
                seen.image(),
                artPixel > 1
                        ? new ArtPixels(layout.width(), layout.height(), seen, blackest)
                        : FilmComposer.noLighterThan(layout, content, blackest, mirrored),
                FilmComposer.noLighterThan(layout, content, lastWith(curve, (most + 1) / 2), mirrored),
                FilmComposer.noLighterThan(layout, content, code(range.black() + span / 2), mirrored),
                FilmComposer.noLighterThan(layout, content, code(range.black() + span * LIGHT), mirrored),
                EDGE_ART_PIXELS * Math.max(1, artPixel),
                seen.outlined());
    }

    /** The lightest grey with a coverage; none, -1, where the curve never blackens anything. */
    private static int lastWith(ToneCurve curve, int coverage) {
        if (coverage == 0) {
            return -1;
        }
        int grey = 0;
        while (grey < ToneCurve.CODES - 2 && curve.coverage(grey + 1) >= coverage) {
            grey++;
        }
        return grey;
    }

    private static int code(double luminance) {
        return (int) Math.min(ToneCurve.CODES - 2, Math.round(luminance * ToneCurve.SOLID));
    }

    @Override
    public int width() {
        return core.width();
    }

    @Override
    public int height() {
        return core.height();
    }

    @Override
    public int bitsPerSample() {
        return 1;
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        int halo = (int) Math.ceil(edge) + 1;
        FilmWindow cores = new FilmWindow(core, image, halo);
        FilmWindow darks = new FilmWindow(dark, image, halo);
        FilmWindow halves = new FilmWindow(half, image, halo);
        FilmWindow greys = new FilmWindow(grey, image, halo);
        Optional<Outlined.Rows> rows = outlined.map(Outlined::rows);
        return (first, count) -> {
            BitPlane black = cores.rows(first, count);
            if (black.isEmpty()) {
                return new byte[Math.multiplyExact(count, bytesPerRow())];
            }
            long[] near = DiscReach.within(black, edge).words();
            long[] light =
                    DiscReach.within(greys.rows(first, count).turned(), edge).words();
            long[] darker = darks.rows(first, count).words();
            long[] lighter = halves.rows(first, count).words();
            for (int i = 0; i < near.length; i++) {
                black.words()[i] |= near[i] & (darker[i] | (lighter[i] & light[i]));
            }
            byte[] packed = cores.packed(black.rows(halo, count), first);
            rows.ifPresent(outline -> {
                for (int row = 0; row < count; row++) {
                    int[] shares = outline.row(first + row);
                    for (int x = 0; x < shares.length; x++) {
                        if (shares[x] != Outlined.WHOLE) {
                            packed[row * bytesPerRow() + (x >> 3)] &= (byte) ~(0x80 >> (x & 7));
                        }
                    }
                }
            });
            return packed;
        };
    }

    /**
     * Art on its film, pixel by pixel and without enlarging: black wherever the middle of the film pixel lies on an art pixel no
     * lighter than a grey.
     *
     * @param width of the film
     * @param height of the film
     * @param content as it lies on the film, mirrored if that is
     * @param grey linear luminance, 0 to 65 534; -1 for nowhere
     */
    private record ArtPixels(int width, int height, FilmContent.Picture content, int grey) implements FilmRows {
        @Override
        public int bitsPerSample() {
            return 1;
        }

        @Override
        public Bands.Maker<byte[]> maker() {
            return new RowMaker();
        }

        /** Owned by one thread: the row made last is kept, since an enlarged art row serves many. */
        private final class RowMaker implements Bands.Maker<byte[]> {
            private final short[] codes = new short[content.art().width()];
            private final byte[] row = new byte[bytesPerRow()];
            private int artRow = -1;

            @Override
            public byte[] make(int firstRow, int rowCount) {
                byte[] band = new byte[Math.multiplyExact(rowCount, bytesPerRow())];
                PixelRect image = content.image();
                for (int y = firstRow; y < firstRow + rowCount; y++) {
                    if (y >= image.top() && y < image.bottom()) {
                        turnTo(content.placing().down().nearest(y - image.top()));
                        System.arraycopy(row, 0, band, (y - firstRow) * bytesPerRow(), row.length);
                    }
                }
                return band;
            }

            private void turnTo(int wanted) {
                if (wanted == artRow) {
                    return;
                }
                artRow = wanted;
                content.art().readRow(artRow, codes);
                Arrays.fill(row, (byte) 0);
                PixelRect image = content.image();
                int start = -1;
                for (int x = 0; x <= image.width(); x++) {
                    boolean black = x < image.width()
                            && (codes[content.placing().across().nearest(x)] & 0xFFFF) <= grey;
                    if (black && start < 0) {
                        start = x;
                    } else if (!black && start >= 0) {
                        PackedRows.blacken(row, 0, image.left() + start, image.left() + x);
                        start = -1;
                    }
                }
            }
        }
    }
}
