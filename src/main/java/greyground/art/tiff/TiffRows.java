package greyground.art.tiff;

import greyground.art.packing.Lzw;
import greyground.art.packing.PackBits;
import greyground.art.packing.Stretch;
import greyground.art.packing.Unpacked;
import greyground.art.packing.Zstandard;
import greyground.art.page.ArtBytes;
import greyground.art.page.PackedBits;
import greyground.art.page.SampleReading;
import greyground.art.page.SampleRows;
import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;
import org.tukaani.xz.XZInputStream;

/** Unpacks bands of a TIFF page out of its strips or tiles. */
final class TiffRows implements SampleRows {
    /** What xz's own strongest setting needs to unpack, 65 MiB, and some. */
    private static final int LZMA_KIB = 80 << 10;

    private final ArtBytes file;
    private final TiffBlocks blocks;
    private final int rowBytes;
    private final byte[] packedRow;
    private final byte[] blockRow;
    private final @Nullable InputStream[] open;
    private final int[] openBlock;
    private final int[] openRow;

    TiffRows(ArtBytes file, TiffBlocks blocks) {
        this.file = file;
        this.blocks = blocks;
        this.rowBytes = blocks.width() * blocks.samplesPerPixel() * blocks.bytesPerSample();
        this.packedRow = new byte[(int) blocks.packedRowBytes()];
        this.blockRow = new byte[blocks.blockWidth() * blocks.blockSamples() * blocks.bytesPerSample()];
        this.open = new InputStream[blocks.planes()];
        this.openBlock = new int[blocks.planes()];
        this.openRow = new int[blocks.planes()];
    }

    @Override
    public void read(int firstRow, int rowCount, byte[] into) throws IOException {
        int row = firstRow;
        while (row < firstRow + rowCount) {
            int blockDown = row / blocks.blockHeight();
            int inBlock = row % blocks.blockHeight();
            int rows = Math.min(firstRow + rowCount - row, blocks.blockHeight() - inBlock);
            for (int plane = 0; plane < blocks.planes(); plane++) {
                for (int across = 0; across < blocks.across(); across++) {
                    int block = (plane * blocks.down() + blockDown) * blocks.across() + across;
                    readBlock(plane, block, inBlock, rows, across, into, (row - firstRow) * rowBytes);
                }
            }
            row += rows;
        }
    }

    private void readBlock(int plane, int block, int inBlock, int rows, int across, byte[] into, int at)
            throws IOException {
        InputStream unpacker = at(plane, block, inBlock);
        int pixelBytes = blocks.samplesPerPixel() * blocks.bytesPerSample();
        int firstPixel = across * blocks.blockWidth();
        int pixels = Math.min(blocks.blockWidth(), blocks.width() - firstPixel);
        boolean asStored = blocks.blockWidth() == blocks.width() && !blocks.separate() && blocks.bits() >= 8;
        for (int r = 0; r < rows; r++) {
            int to = at + r * rowBytes + firstPixel * pixelBytes;
            if (asStored) {
                // Whole rows land where they belong; without differences all of them at once.
                int some = blocks.predicted() ? 1 : rows;
                Unpacked.fill(unpacker, into, to, some * rowBytes);
                if (blocks.predicted()) {
                    addUp(into, to);
                }
                r += some - 1;
                continue;
            }
            byte[] row = unpackRow(unpacker);
            if (blocks.separate()) {
                interleave(row, pixels, into, to + plane * blocks.bytesPerSample(), pixelBytes);
            } else {
                System.arraycopy(row, 0, into, to, pixels * pixelBytes);
            }
        }
        openRow[plane] = inBlock + rows;
    }

    private byte[] unpackRow(InputStream unpacker) throws IOException {
        if (blocks.bits() >= 8) {
            Unpacked.fill(unpacker, blockRow, 0, blockRow.length);
            if (blocks.predicted()) {
                addUp(blockRow, 0);
            }
        } else {
            Unpacked.fill(unpacker, packedRow, 0, packedRow.length);
            PackedBits.spread(packedRow, 0, blocks.bits(), blockRow, 0, blockRow.length, blocks.photometric() != 3);
        }
        return blockRow;
    }

    private void interleave(byte[] row, int pixels, byte[] into, int to, int pixelBytes) {
        int size = blocks.bytesPerSample();
        for (int x = 0; x < pixels; x++) {
            for (int b = 0; b < size; b++) {
                into[to + x * pixelBytes + b] = row[x * size + b];
            }
        }
    }

    /** TIFF 6.0 section 14: each sample is stored as what it exceeds its left neighbour by. */
    private void addUp(byte[] row, int at) {
        int bytes = blocks.bytesPerSample();
        int step = blocks.blockSamples() * bytes;
        int end = at + blockRow.length;
        // One channel after the other: its sum stays in a register.
        for (int first = at; first < at + step; first += bytes) {
            if (bytes == 1) {
                addUpOne(row, first, end, step);
            } else {
                addUpTwo(row, first, end, step, blocks.bigEndian());
            }
        }
    }

    private static void addUpOne(byte[] row, int first, int end, int step) {
        int sum = 0;
        for (int i = first; i < end; i += step) {
            sum += row[i];
            row[i] = (byte) sum;
        }
    }

    private static void addUpTwo(byte[] row, int first, int end, int step, boolean bigEndian) {
        int sum = 0;
        for (int i = first; i < end; i += step) {
            sum += SampleReading.two(row, i, bigEndian);
            SampleReading.putTwo(row, i, sum, bigEndian);
        }
    }

    /** The plane's unpacker, standing at a row of a block. */
    private InputStream at(int plane, int block, int row) throws IOException {
        InputStream current = open[plane];
        if (current != null && openBlock[plane] == block && openRow[plane] == row) {
            return current;
        }
        if (current != null) {
            current.close();
        }
        InputStream fresh = unpacker(block, current);
        open[plane] = fresh;
        openBlock[plane] = block;
        fresh.skipNBytes(row * blocks.packedRowBytes());
        return fresh;
    }

    private InputStream unpacker(int block, @Nullable InputStream spent) throws IOException {
        long from = blocks.offsets()[block];
        // Where nothing is packed some writers give counts wrongly, or none; the file's end is the limit that counts.
        long count = blocks.compression() == TiffBlocks.NONE ? file.size() : blocks.counts()[block];
        Stretch packed = new Stretch(file, from, count, blocks.bitsReversed());
        return switch (blocks.compression()) {
            case TiffBlocks.NONE -> packed;
            case TiffBlocks.LZW -> lzw(packed, spent);
            case TiffBlocks.DEFLATE -> Unpacked.inflated(packed);
            case TiffBlocks.PACK_BITS -> new PackBits(packed);
            case TiffBlocks.LZMA -> new XZInputStream(packed, LZMA_KIB);
            case TiffBlocks.ZSTANDARD -> new Zstandard(packed);
            case TiffBlocks.JPEG -> TiffJpeg.unpack(file, blocks, from, count);
            case TiffBlocks.WEBP -> TiffWebp.unpack(file.part(from, count), blocks);
            default -> throw new IllegalStateException("compression " + blocks.compression());
        };
    }

    private static Lzw lzw(Stretch packed, @Nullable InputStream spent) {
        if (spent instanceof Lzw lzw) {
            lzw.begin(packed);
            return lzw;
        }
        return new Lzw(packed);
    }

    @Override
    public void close() throws IOException {
        for (InputStream unpacker : open) {
            if (unpacker != null) {
                unpacker.close();
            }
        }
    }
}
