package greyground.art.tiff;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Ink;
import greyground.art.page.Page;
import greyground.art.page.Samples;
import greyground.art.page.TiffDirectory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Understands TIFF 6.0 and BigTIFF pages: 1 to 16 bits; grey, palette, RGB, CMYK, L*a*b*; strips and tiles. */
public final class TiffFormat implements ArtFormat {
    private static final int BAND_BYTES = 1 << 20;
    /** A packed strip larger than this is read from the top down, a smaller one is unpacked whole by any thread. */
    private static final int BLOCK_BYTES = 8 << 20;

    @Override
    public String kind() {
        return "TIFF";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) throws IOException {
        List<TiffDirectory> directories = TiffDirectory.all(file, 0, Integer.MAX_VALUE);
        List<PageOpener> pages = new ArrayList<>();
        for (int i = 0; i < directories.size(); i++) {
            TiffDirectory directory = directories.get(i);
            int place = i;
            boolean reducedCopyOrMask = (directory.number(254, 0) & 5) != 0;
            if (!reducedCopyOrMask && directory.has(256)) {
                pages.add(() -> page(file, directory, place));
            }
        }
        return pages;
    }

    private static Page page(ArtBytes file, TiffDirectory directory, int place) throws IOException {
        TiffBlocks blocks = blocks(file, directory, place);
        Samples samples = new Samples(
                blocks.width(), blocks.height(), blocks.samplesPerPixel(), blocks.bytesPerSample(), blocks.bigEndian());
        Ink ink = ink(directory, blocks);
        byte[] profile = directory.bytes(34_675);
        long blockBytes =
                (long) blocks.blockWidth() * blocks.blockHeight() * samples.channels() * samples.bytesPerSample();
        boolean tiled = blocks.blockWidth() != blocks.width() || directory.has(322);
        boolean wholeBlocks = tiled || blocks.compression() == TiffBlocks.JPEG || blocks.fax();
        boolean stored = blocks.compression() == TiffBlocks.NONE;
        boolean anyOrder = wholeBlocks || stored || blockBytes <= BLOCK_BYTES;
        int bandRows = bandRows(samples, blocks, anyOrder && !(stored && !tiled));
        return new Page(
                samples,
                ink,
                profile.length == 0 ? null : profile,
                directory.orientation(),
                directory.density(),
                blocks.bits(),
                bandRows,
                anyOrder,
                wholeBlocks && !tiled ? blockBytes : 0,
                blocks.fax() ? Page.UNBOUNDED : Page.PACKED,
                () -> new TiffRows(file, blocks));
    }

    private static int bandRows(Samples samples, TiffBlocks blocks, boolean wholeBlocks) {
        long rows = Math.max(1, BAND_BYTES / samples.bytesPerRow());
        if (wholeBlocks) {
            rows = Math.max(1, rows / blocks.blockHeight()) * blocks.blockHeight();
        }
        return (int) Math.min(rows, samples.height());
    }

    private static TiffBlocks blocks(ArtBytes file, TiffDirectory directory, int place) throws IOException {
        int width = size(directory.number(256, 0), "width");
        int height = size(directory.number(257, 0), "height");
        int samples = (int) Math.max(0, Math.min(1000, directory.number(277, 1)));
        if (samples < 1 || samples > 32) {
            throw new IOException("it claims " + samples + " samples a pixel; 1 to 32 can be read");
        }
        int bits = bits(directory);
        boolean tiled = directory.has(322);
        int blockWidth = tiled ? size(directory.number(322, 0), "tile width") : width;
        long stripRows = Math.max(0, directory.number(278, height));
        int blockHeight = tiled
                ? size(directory.number(323, 0), "tile height")
                : (int) (stripRows == 0 || stripRows > height ? height : stripRows);
        int compression = compression((int) directory.number(259, 1));
        int predictor = (int) directory.number(317, 1);
        if (predictor > 2 || (predictor == 2 && bits < 8)) {
            throw new IOException("its predictor " + predictor + " is not one that can be read: save it without");
        }
        boolean separate = samples > 1 && directory.number(284, 1) == 2;
        boolean packsBytes = compression == TiffBlocks.LZW
                || compression == TiffBlocks.DEFLATE
                || compression == TiffBlocks.OLD_DEFLATE;
        TiffBlocks shape = new TiffBlocks(
                width,
                height,
                blockWidth,
                blockHeight,
                samples,
                bits,
                separate,
                compression,
                predictor == 2 && packsBytes,
                directory.number(266, 1) == 2,
                directory.bigEndian(),
                (int) directory.number(262, 1),
                directory.numbers(tiled ? 324 : 273),
                directory.numbers(tiled ? 325 : 279),
                directory.bytes(347),
                place);
        return located(file, shape);
    }

    /** Checks the blocks' places against the file before anything is read or any memory taken. */
    private static TiffBlocks located(ArtBytes file, TiffBlocks shape) throws IOException {
        long wanted = (long) shape.across() * shape.down() * shape.planes();
        if (shape.offsets().length < wanted) {
            throw new IOException("it claims " + shape.width() + " x " + shape.height() + " pixels in " + wanted
                    + " strips or tiles, but lists " + shape.offsets().length);
        }
        long[] counts = shape.counts();
        boolean stored = shape.compression() == TiffBlocks.NONE;
        long fullBlock = Math.multiplyExact(shape.packedRowBytes(), (long) shape.blockHeight());
        if (counts.length < wanted) {
            if (!stored) {
                throw new IOException("it does not say how long its strips are");
            }
            counts = new long[(int) wanted];
            java.util.Arrays.fill(counts, fullBlock);
        }
        for (int i = 0; i < wanted; i++) {
            long from = shape.offsets()[i];
            if (from < 0 || counts[i] < 0 || from > file.size()) {
                throw new IOException("it ends at byte " + file.size() + ", before its picture data at byte " + from
                        + ": the file is cut short");
            }
        }
        if (stored) {
            long last = (wanted - 1) / Math.max(1, shape.across()) % shape.down();
            long rows = Math.min(shape.blockHeight(), shape.height() - last * shape.blockHeight());
            long end = shape.offsets()[(int) wanted - 1] + rows * shape.packedRowBytes();
            if (end > file.size() && shape.across() == 1) {
                throw new IOException("it ends at byte " + file.size() + ", before its picture data do at byte " + end
                        + ": the file is cut short");
            }
        }
        return new TiffBlocks(
                shape.width(),
                shape.height(),
                shape.blockWidth(),
                shape.blockHeight(),
                shape.samplesPerPixel(),
                shape.bits(),
                shape.separate(),
                shape.compression(),
                shape.predicted(),
                shape.bitsReversed(),
                shape.bigEndian(),
                shape.photometric(),
                shape.offsets(),
                counts,
                shape.jpegTables(),
                shape.directory());
    }

    private static int size(long pixels, String what) throws IOException {
        if (pixels < 1 || pixels > ArtFormat.SIDE_AT_MOST) {
            throw new IOException(
                    "its " + what + " is " + pixels + " pixels; 1 to " + ArtFormat.SIDE_AT_MOST + " can be read");
        }
        return (int) pixels;
    }

    private static int bits(TiffDirectory directory) throws IOException {
        long[] bits = directory.numbers(258);
        int first = bits.length == 0 ? 1 : (int) bits[0];
        for (long other : bits) {
            if (other != first) {
                throw new IOException("its samples differ in depth: save it with 8 or 16 bits for every channel");
            }
        }
        long format = directory.number(339, 1);
        boolean whole = format == 1 || format == 4;
        if (!whole || (first != 1 && first != 2 && first != 4 && first != 8 && first != 16)) {
            throw new IOException("its samples are " + first + "-bit " + (whole ? "" : "signed or fractional ")
                    + "numbers; 1, 2, 4, 8 and 16-bit whole ones can be read: save it with 8 or 16 bits");
        }
        return first;
    }

    private static int compression(int code) throws IOException {
        return switch (code) {
            case 1, 2, 3, 4, 5, 7, 8, 32_946, 32_773 -> code;
            case 50_000 -> throw unreadable("Zstandard");
            case 50_001 -> throw unreadable("WebP");
            case 34_925 -> throw unreadable("LZMA");
            case 6 -> throw unreadable("old-style JPEG");
            case 34_712, 33_003, 33_005 -> throw unreadable("JPEG 2000");
            default -> throw unreadable("unknown (" + code + ")");
        };
    }

    private static IOException unreadable(String compression) {
        return new IOException("its " + compression
                + " compression can't be read: save it uncompressed or with LZW, Deflate, PackBits, JPEG or G4");
    }

    private static Ink ink(TiffDirectory directory, TiffBlocks blocks) throws IOException {
        Ink.Model model = switch (blocks.photometric()) {
            case 0, 1 -> Ink.Model.GREY;
            case 2 -> Ink.Model.RGB;
            case 3 -> Ink.Model.PALETTE;
            case 5 -> Ink.Model.CMYK;
            case 6 -> {
                if (blocks.compression() != TiffBlocks.JPEG) {
                    throw new IOException("its YCbCr samples can be read only in JPEG: save it as RGB");
                }
                yield Ink.Model.RGB;
            }
            case 8 -> Ink.Model.LAB;
            default ->
                throw new IOException("its colours are of kind " + blocks.photometric()
                        + ", which can't be read: save it as grey, RGB or CMYK");
        };
        if (blocks.samplesPerPixel() < model.channels()) {
            // L*a*b* with L* alone is allowed; everything else needs its channels.
            if (model != Ink.Model.LAB) {
                throw new IOException(
                        "it claims " + model + " but has " + blocks.samplesPerPixel() + " samples a pixel");
            }
        }
        if (model == Ink.Model.PALETTE) {
            return Ink.palette(palette(directory, blocks.bits()));
        }
        long[] extra = directory.numbers(338);
        int channel = model.channels();
        Ink.Alpha alpha = Ink.Alpha.STRAIGHT;
        boolean hasAlpha = extra.length > 0 && (extra[0] == 1 || extra[0] == 2) && blocks.samplesPerPixel() > channel;
        if (hasAlpha && extra[0] == 1) {
            alpha = Ink.Alpha.OVER_BLACK;
        }
        return new Ink(model, blocks.photometric() == 0, alpha, hasAlpha ? channel : -1, null);
    }

    private static float[][] palette(TiffDirectory directory, int bits) throws IOException {
        long[] map = directory.numbers(320);
        int entries = 1 << Math.min(8, bits);
        if (bits > 8 || map.length < 3 * entries) {
            throw new IOException("its palette has " + map.length / 3 + " colours where " + entries + " are needed");
        }
        float[][] palette = new float[entries][];
        for (int i = 0; i < entries; i++) {
            palette[i] = new float[] {map[i] / 65_535f, map[entries + i] / 65_535f, map[2 * entries + i] / 65_535f, 1};
        }
        return palette;
    }
}
