package greyground.art.webp;

import greyground.art.library.LibraryReader;
import greyground.art.packing.Stretch;
import greyground.art.page.ArtBytes;
import greyground.art.page.Interpretation;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.RowPipe;
import greyground.art.page.RowSink;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.function.BooleanSupplier;
import java.util.function.UnaryOperator;

/** Lossless WebP pictures (RFC 9649, 3), unpacked whole. */
final class LosslessPicture implements RowPipe.Source {
    private static final int HEAD_BYTES = 5;
    private static final int SIDE_BITS = 14;

    private final Stretch packed;
    private final Samples samples;
    private volatile boolean stopped;

    private LosslessPicture(Stretch packed, Samples samples) {
        this.packed = packed;
        this.samples = samples;
    }

    /** The picture whose data, the VP8L chunk's, are the {@code length} bytes at {@code at}; its alpha is passed over unless it is used. */
    static Page page(ArtBytes file, long at, long length, boolean alpha, LibraryReader.Beside beside)
            throws IOException {
        Octets head = new Octets(file.read(at, HEAD_BYTES), false);
        long size = head.u32(1);
        if (head.u8(0) != 0x2F || size >>> (2 * SIDE_BITS + 1) != 0) {
            throw new Unreadable(PrefixCode.DAMAGED);
        }
        int sideMask = (1 << SIDE_BITS) - 1;
        Samples samples = new Samples(
                (int) (size & sideMask) + 1, (int) (size >> SIDE_BITS & sideMask) + 1, alpha ? 4 : 3, 1, true);
        return new Page(
                samples,
                alpha
                        ? Interpretation.withAlpha(Interpretation.Model.RGB)
                        : Interpretation.plain(Interpretation.Model.RGB),
                beside.profile(),
                beside.orientation(),
                beside.density(),
                8,
                samples.bandRows(),
                false,
                wholeBytes(samples),
                Page.UNBOUNDED,
                () -> rows(file, at + HEAD_BYTES, length - HEAD_BYTES, samples),
                beside.remarks());
    }

    /** What unpacking takes: the pixels, and perhaps the numbers of their colours beside them. */
    static long wholeBytes(Samples samples) {
        return 2L * Integer.BYTES * samples.width() * samples.height();
    }

    /** Rows of {@code samples}, red, green, blue and perhaps alpha, from data without a head. */
    static RowPipe rows(ArtBytes file, long at, long length, Samples samples) {
        return new RowPipe(
                new LosslessPicture(new Stretch(file, at, length, false), samples),
                (int) samples.bytesPerRow(),
                RowPipe.limitSeconds((long) samples.width() * samples.height()));
    }

    @Override
    public void run(RowSink sink) throws IOException {
        int[] pixels = unpacked(new LosslessBits(packed), samples.width(), samples.height(), () -> stopped);
        int channels = samples.channels();
        byte[] row = new byte[(int) samples.bytesPerRow()];
        for (int y = 0, at = 0; y < samples.height(); y++) {
            for (int i = 0; i < row.length; at++) {
                int pixel = pixels[at];
                row[i++] = (byte) (pixel >> 16);
                row[i++] = (byte) (pixel >> 8);
                row[i++] = (byte) pixel;
                if (channels == 4) {
                    row[i++] = (byte) (pixel >> 24);
                }
            }
            sink.row(row, 0, row.length);
        }
    }

    @Override
    public void abort() {
        stopped = true;
    }

    private static int[] unpacked(LosslessBits bits, int width, int height, BooleanSupplier stopped)
            throws IOException {
        Deque<UnaryOperator<int[]>> undoings = new ArrayDeque<>();
        int across = width;
        int kinds = 0;
        while (bits.flag()) {
            int kind = bits.number(2);
            if ((kinds >> kind & 1) != 0) {
                throw new Unreadable(PrefixCode.DAMAGED);
            }
            kinds |= 1 << kind;
            int wide = across;
            if (kind == 2) {
                undoings.push(pixels -> {
                    LosslessTransforms.addGreen(pixels);
                    return pixels;
                });
            } else if (kind == 3) {
                int entries = bits.number(8) + 1;
                int[] palette = LosslessPixels.read(bits, entries, 1, false, stopped);
                LosslessTransforms.addUp(palette);
                int halvings = LosslessTransforms.halvings(entries);
                across = LosslessPixels.blocks(wide, halvings);
                undoings.push(pixels -> LosslessTransforms.coloured(pixels, wide, height, palette, halvings));
            } else {
                int blockBits = 2 + bits.number(3);
                int[] blocks = LosslessPixels.read(
                        bits,
                        LosslessPixels.blocks(wide, blockBits),
                        LosslessPixels.blocks(height, blockBits),
                        false,
                        stopped);
                undoings.push(pixels -> {
                    if (kind == 0) {
                        LosslessTransforms.addPredicted(pixels, wide, blocks, blockBits);
                    } else {
                        LosslessTransforms.addShares(pixels, wide, blocks, blockBits);
                    }
                    return pixels;
                });
            }
        }
        int[] pixels = LosslessPixels.read(bits, across, height, true, stopped);
        for (UnaryOperator<int[]> undoing : undoings) {
            pixels = undoing.apply(pixels);
        }
        return pixels;
    }
}
