package greyground.film.compose;

import greyground.film.job.ReadingSide;
import greyground.film.sheet.FilmRows;
import greyground.film.sheet.Mark;
import greyground.film.sheet.Patch;
import greyground.film.sheet.Sheet;
import greyground.film.sheet.SheetLayout;
import greyground.grain.ThresholdTile;
import greyground.quantity.Refusal;
import greyground.raster.Bands;
import greyground.raster.EnlargedRows;
import greyground.raster.PackedRows;
import greyground.raster.PixelRect;
import greyground.tone.ToneCurve;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Composes one film sheet: art, enlarged in linear light, through the tone curve and the grain, with its marks and wedge
 * strip. A pure function of place, so any bands on any threads give the same bytes.
 *
 * <p>A mirrored film is the plain film seen from behind, pixel for pixel, grain and marks included; only the legends, which
 * the page's writer sets as text, keep reading right.
 */
public final class FilmComposer implements FilmRows {
    // Columns worked on at a time: their sums and four ring rows stay in the nearest cache.
    private static final int STRIP = 2048;

    private final SheetLayout layout;
    private final FilmContent content;
    private final ToneCurve curve;
    private final int bits;
    private final @Nullable GrainLimits grain;
    private final char[] coverages;

    private FilmComposer(
            SheetLayout layout, FilmContent content, ToneCurve curve, int bits, @Nullable GrainLimits grain) {
        this(layout, content, curve, bits, grain, curve.table());
    }

    private FilmComposer(
            SheetLayout layout,
            FilmContent content,
            ToneCurve curve,
            int bits,
            @Nullable GrainLimits grain,
            char[] coverages) {
        this.layout = layout;
        this.content = content;
        this.curve = curve;
        this.bits = bits;
        this.grain = grain;
        this.coverages = coverages;
    }

    /**
     * A film of hard dots, one bit a pixel.
     *
     * @param layout not mirrored
     * @param content placed on that layout
     * @param grain at film resolution
     * @param mirrored true where the film must be mirrored on its ink side: {@link ReadingSide#mirrored}
     */
    public static FilmComposer screened(
            SheetLayout layout, FilmContent content, ToneCurve curve, ThresholdTile grain, boolean mirrored) {
        int width = layout.width();
        GrainLimits limits = content instanceof FilmContent.Screen screen
                ? GrainLimits.of(grain, screen.coverage(), mirrored, width)
                : content instanceof FilmContent.Lines lines
                        ? GrainLimits.of(grain, lines.coverage(), mirrored, width)
                        : GrainLimits.of(grain, curve, mirrored, width);
        return new FilmComposer(
                mirrored ? layout.mirrored() : layout, mirrored ? content.mirrored(width) : content, curve, 1, limits);
    }

    /**
     * Black where the art is as dark as a grey or darker, and nowhere else: no grain, no marks, no wedge strip.
     *
     * @param layout not mirrored
     * @param content placed on that layout
     * @param grey linear luminance, 0 to 65 534; -1 for nowhere
     * @param mirrored as for {@link #screened}
     */
    static FilmComposer noLighterThan(SheetLayout layout, FilmContent content, int grey, boolean mirrored) {
        char[] table = new char[ToneCurve.CODES];
        Arrays.fill(table, 0, grey + 1, (char) ToneCurve.SOLID);
        ThresholdTile even = new ThresholdTile(1, 1, new char[1]);
        FilmContent all = content instanceof FilmContent.Picture picture
                ? new FilmContent.Picture(picture.art(), picture.placing())
                : content;
        return screened(layout.bare(), all, new ToneCurve("no lighter", table), even, mirrored);
    }

    /**
     * A film that carries density itself.
     *
     * @param layout not mirrored
     * @param content placed on that layout
     * @param bits 8 or 16
     * @param mirrored as for {@link #screened}
     */
    public static FilmComposer continuous(
            SheetLayout layout, FilmContent content, ToneCurve curve, int bits, boolean mirrored) {
        if (bits != 8 && bits != 16) {
            throw Refusal.use("continuous-tone film has " + bits + " bits; it must have 8 or 16");
        }
        return new FilmComposer(
                mirrored ? layout.mirrored() : layout,
                mirrored ? content.mirrored(layout.width()) : content,
                curve,
                bits,
                null);
    }

    /**
     * The same film, whose rows carry its picture only within a rectangle of the sheet: there they are equal bit for bit, and a
     * few columns take a small part of the whole film's work.
     *
     * @param part on the sheet as the film is, mirrored or not
     */
    public FilmComposer within(PixelRect part) {
        return new FilmComposer(layout, content.within(part), curve, bits, grain, coverages);
    }

    /** The strokes of art of lines, solid and without marks; empty for other content. */
    public Optional<FilmRows> lines() {
        return content instanceof FilmContent.Lines lines ? Optional.of(LineFilm.of(layout, lines)) : Optional.empty();
    }

    /** How far from a pixel of this film, in pixels, the strokes of its art decide what becomes of it. */
    public int reachPixels() {
        return content instanceof FilmContent.Lines lines ? LineFilm.reach(lines.growth()) : 0;
    }

    public SheetLayout layout() {
        return layout;
    }

    public Sheet sheet() {
        return layout.sheet(content.image());
    }

    @Override
    public int width() {
        return layout.width();
    }

    @Override
    public int height() {
        return layout.height();
    }

    @Override
    public int bitsPerSample() {
        return bits;
    }

    @Override
    public Bands.Maker<byte[]> maker() {
        return new RowMaker();
    }

    /** Owned by one thread: the enlarged rows and the sums are reused from row to row. */
    private final class RowMaker implements Bands.Maker<byte[]> {
        private final PixelRect image = content.image();
        private final int lead = bits == 1 ? image.left() & 7 : 0;
        private final int[] sums = new int[lead + image.width()];
        private final char[] thresholds = new char[STRIP];
        private final @Nullable EnlargedRows enlarged = content instanceof FilmContent.Picture picture
                ? new EnlargedRows(
                        picture.art(),
                        picture.placing().across(),
                        picture.placing().down(),
                        lead)
                : null;
        private final @Nullable Outlined outlined = content instanceof FilmContent.Picture picture
                ? picture.outlined().orElse(null)
                : null;
        private final Outlined.@Nullable Rows outline = outlined == null ? null : outlined.rows();
        private int[] shares = new int[0];
        private final Bands.@Nullable Maker<byte[]> strokes =
                lines().map(FilmRows::maker).orElse(null);
        private byte[] band = new byte[0];
        private int start;
        // One span taker for all rows, so that marks cost no allocation.
        private final Mark.Span black = this::blacken;

        @Override
        public byte[] make(int firstRow, int rowCount) throws IOException {
            byte[] drawn = strokes == null ? band : strokes.make(firstRow, rowCount);
            band = new byte[Math.multiplyExact(rowCount, bytesPerRow())];
            // Few marks reach into one band; and short loops in methods of their own are soon compiled, where one long
            // method would be compiled over and over as a whole.
            Mark[] near = within(layout.marks(), Mark::box, firstRow, rowCount).toArray(new Mark[0]);
            Patch[] fields =
                    within(layout.patches(), Patch::box, firstRow, rowCount).toArray(new Patch[0]);
            for (int row = 0; row < rowCount; row++) {
                start = row * bytesPerRow();
                int y = firstRow + row;
                if (y >= image.top() && y < image.bottom()) {
                    picture(y);
                    if (strokes != null) {
                        PackedRows.keep(band, drawn, start, bytesPerRow());
                    }
                }
                marks(near, y);
                patches(fields, y);
            }
            byte[] made = band;
            band = new byte[0];
            return made;
        }

        private static <T> List<T> within(List<T> all, Function<T, PixelRect> box, int firstRow, int rowCount) {
            return all.stream()
                    .filter(each -> box.apply(each).top() < firstRow + rowCount
                            && box.apply(each).bottom() > firstRow)
                    .toList();
        }

        private void marks(Mark[] near, int y) {
            for (Mark mark : near) {
                mark.spans(y, black);
            }
        }

        private void patches(Patch[] near, int y) {
            for (Patch patch : near) {
                if (y >= patch.box().top() && y < patch.box().bottom()) {
                    patch(patch, y);
                }
            }
        }

        private void picture(int y) {
            if (enlarged != null) {
                enlarged.turnTo(y - image.top());
            }
            if (outline != null) {
                shares = outline.row(y);
            }
            for (int from = 0; from < sums.length; from += STRIP) {
                int to = Math.min(sums.length, from + STRIP);
                if (grain == null) {
                    density(from, to);
                } else {
                    dots(grain, y, from, to);
                }
            }
        }

        private void dots(GrainLimits limits, int y, int from, int to) {
            limits.copyRow(image.left() - lead + from, y, to - from, sums, from, thresholds);
            if (outlined != null) {
                outline(limits, outlined, y, from, to);
            }
            if (enlarged != null) {
                enlarged.addTo(sums, from, to);
            }
            if (from == 0) {
                Arrays.fill(sums, 0, lead, 0);
            }
            PackedRows.packSigns(sums, from, to, band, start + (image.left() - lead) / 8);
        }

        private void outline(GrainLimits limits, Outlined within, int y, int from, int to) {
            for (int i = Math.max(from, lead); i < to; i++) {
                int x = image.left() - lead + i;
                if (shares[x] != Outlined.WHOLE) {
                    sums[i] = limits.start(within.threshold(limits.threshold(x, y), shares[x]));
                }
            }
        }

        private void density(int from, int to) {
            if (enlarged == null) {
                int coverage = content instanceof FilmContent.Screen screen ? screen.coverage() : 0;
                for (int x = from; x < to; x++) {
                    write(image.left() + x, coverage);
                }
                return;
            }
            Arrays.fill(sums, from, to, 0);
            enlarged.addTo(sums, from, to);
            for (int x = from; x < to; x++) {
                int coverage = coverages[EnlargedRows.grey(sums[x])];
                int column = image.left() + x;
                write(column, outlined == null ? coverage : outlined.coverage(coverage, shares[column]));
            }
        }

        private void patch(Patch patch, int y) {
            int coverage = patch.coverage(curve);
            for (int x = patch.box().left(); x < patch.box().right(); x++) {
                if (grain == null) {
                    write(x, coverage);
                } else if (coverage > grain.threshold(x, y)) {
                    blacken(x, x + 1);
                }
            }
        }

        private void blacken(int from, int to) {
            if (bits == 1) {
                PackedRows.blacken(band, start, from, to);
            } else {
                int bytes = bits / 8;
                Arrays.fill(band, start + from * bytes, start + to * bytes, (byte) 0xFF);
            }
        }

        private void write(int x, int coverage) {
            if (bits == 8) {
                // 65 535 = 255 * 257, so this is the nearest of 256 levels.
                band[start + x] = (byte) ((coverage + 128) / 257);
            } else {
                band[start + 2 * x] = (byte) (coverage >>> 8);
                band[start + 2 * x + 1] = (byte) coverage;
            }
        }
    }
}
