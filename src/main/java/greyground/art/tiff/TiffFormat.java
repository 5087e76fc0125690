package greyground.art.tiff;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Interpretation;
import greyground.art.page.Page;
import greyground.art.page.Samples;
import greyground.art.page.TiffDirectory;
import greyground.art.page.Unreadable;
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
            refuseRaw(directory);
            for (TiffDirectory hanging : i == 0 ? directory.hanging() : List.<TiffDirectory>of()) {
                refuseRaw(hanging);
            }
            boolean reducedCopyOrMask = (directory.number(254, 0) & 5) != 0;
            if (!reducedCopyOrMask && directory.has(256)) {
                pages.add(() -> page(file, directory, place));
            }
        }
        return pages;
    }

    /** A camera's raw file is TIFF whose first pages are small developed copies (colours 32 803 and 34 892: TIFF/EP and DNG). */
    private static void refuseRaw(TiffDirectory directory) throws IOException {
        long colours = directory.number(262, 1);
        if (colours == 32_803 || colours == 34_892) {
            throw new Unreadable("it is a camera's raw file: develop it first, and export the picture as TIFF or PNG");
        }
    }

    private static Page page(ArtBytes file, TiffDirectory directory, int place) throws IOException {
        TiffNumbers numbers = TiffNumbers.of(directory);
        TiffBlocks blocks = blocks(file, directory, numbers);
        if (!numbers.plain() || !blocks.unpacked(file) || lumaAndChroma(blocks)) {
            return whole(file, directory, place, blocks, numbers);
        }
        Samples samples = new Samples(
                blocks.width(), blocks.height(), blocks.samplesPerPixel(), blocks.bytesPerSample(), blocks.bigEndian());
        Interpretation meaning = meaning(directory, blocks);
        byte[] profile = directory.bytes(34_675);
        long blockBytes =
                (long) blocks.blockWidth() * blocks.blockHeight() * samples.channels() * samples.bytesPerSample();
        boolean tiled = blocks.blockWidth() != blocks.width() || directory.has(322);
        boolean wholeBlocks = tiled || blocks.pictures();
        boolean stored = blocks.compression() == TiffBlocks.NONE;
        boolean anyOrder = wholeBlocks || stored || blockBytes <= BLOCK_BYTES;
        int bandRows = bandRows(samples, blocks, anyOrder && !(stored && !tiled));
        return new Page(
                samples,
                meaning,
                profile.length == 0 ? null : profile,
                directory.orientation(),
                directory.density(),
                blocks.bits(),
                bandRows,
                anyOrder,
                wholeBlocks && !tiled ? blockBytes : 0,
                Page.PACKED,
                () -> new TiffRows(file, blocks));
    }

    /** Luma and chroma outside JPEG, and whatever old-style JPEG holds, which the library turns into RGB. */
    private static boolean lumaAndChroma(TiffBlocks blocks) {
        return blocks.compression() == TiffBlocks.OLD_JPEG
                || (blocks.photometric() == 6 && blocks.compression() != TiffBlocks.JPEG);
    }

    private static Page whole(ArtBytes file, TiffDirectory directory, int place, TiffBlocks blocks, TiffNumbers numbers)
            throws IOException {
        boolean asRgb = lumaAndChroma(blocks) && blocks.photometric() != 1;
        long[] coarseness = directory.numbers(530);
        if (asRgb && blocks.separate() && (coarseness.length < 2 || coarseness[0] * coarseness[1] != 1)) {
            throw new Unreadable("its luma and chroma lie apart, in different sizes: save it as RGB");
        }
        Interpretation meaning = asRgb ? Interpretation.plain(Interpretation.Model.RGB) : meaning(directory, blocks);
        int channels = asRgb ? 3 : blocks.samplesPerPixel();
        Samples samples =
                new Samples(blocks.width(), blocks.height(), channels, asRgb || numbers.bits() <= 8 ? 1 : 2, true);
        long pixels = (long) blocks.width() * blocks.height();
        byte[] profile = directory.bytes(34_675);
        return new Page(
                samples,
                meaning,
                profile.length == 0 ? null : profile,
                directory.orientation(),
                directory.density(),
                numbers.bits(),
                bandRows(samples, blocks, false),
                false,
                pixels * channels * Math.max(1, numbers.bits() / 8),
                Page.UNBOUNDED,
                () -> new TiffWhole(
                                place, samples, asRgb ? null : numbers, meaning.model() == Interpretation.Model.PALETTE)
                        .rows(file));
    }

    private static int bandRows(Samples samples, TiffBlocks blocks, boolean wholeBlocks) {
        long rows = Math.max(1, BAND_BYTES / samples.bytesPerRow());
        if (wholeBlocks) {
            rows = Math.max(1, rows / blocks.blockHeight()) * blocks.blockHeight();
        }
        return (int) Math.min(rows, samples.height());
    }

    private static TiffBlocks blocks(ArtBytes file, TiffDirectory directory, TiffNumbers numbers) throws IOException {
        int width = size(directory.number(256, 0), "width");
        int height = size(directory.number(257, 0), "height");
        int samples = (int) Math.max(0, Math.min(1000, directory.number(277, 1)));
        if (samples < 1 || samples > 32) {
            throw new Unreadable("it claims " + samples + " samples a pixel; 1 to 32 can be read");
        }
        int bits = numbers.bits();
        boolean tiled = directory.has(322);
        int blockWidth = tiled ? size(directory.number(322, 0), "tile width") : width;
        long stripRows = Math.max(0, directory.number(278, height));
        int blockHeight = tiled
                ? size(directory.number(323, 0), "tile height")
                : (int) (stripRows == 0 || stripRows > height ? height : stripRows);
        int compression = compression((int) directory.number(259, 1));
        int predictor = (int) directory.number(317, 1);
        boolean differences = (predictor == 2 && bits >= 8 && bits != 24)
                || (predictor == 3 && numbers.form() == TiffNumbers.Form.FRACTION);
        if (predictor > 1 && !differences) {
            throw new Unreadable("its predictor " + predictor + " is not one that can be read: save it without");
        }
        boolean separate = samples > 1 && directory.number(284, 1) == 2;
        boolean packsBytes = compression == TiffBlocks.LZW
                || compression == TiffBlocks.DEFLATE
                || compression == TiffBlocks.LZMA
                || compression == TiffBlocks.ZSTANDARD;
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
                // Some writers list tiles as if they were strips.
                directory.numbers(tiled && directory.has(324) ? 324 : 273),
                directory.numbers(tiled && directory.has(325) ? 325 : 279),
                directory.bytes(347));
        return located(file, shape);
    }

    /** Checks the blocks' places against the file before anything is read or any memory taken. */
    private static TiffBlocks located(ArtBytes file, TiffBlocks shape) throws IOException {
        int wanted =
                Math.toIntExact(Math.min(Integer.MAX_VALUE, (long) shape.across() * shape.down() * shape.planes()));
        if (shape.offsets().length < wanted) {
            throw new Unreadable("it claims " + shape.width() + " x " + shape.height() + " pixels in " + wanted
                    + " strips or tiles, but lists " + shape.offsets().length);
        }
        // Where chroma is stored more coarsely than luma, rows are shorter than they look.
        boolean stored = shape.compression() == TiffBlocks.NONE && shape.photometric() != 6;
        if (shape.counts().length < wanted && !stored) {
            throw new Unreadable("it does not say how long its strips are");
        }
        for (int i = 0; i < wanted; i++) {
            long from = shape.offsets()[i];
            if (from < 0 || from > file.size() || (!stored && shape.counts()[i] < 0)) {
                throw new Unreadable(cut(file, from));
            }
        }
        int last = (wanted - 1) / Math.max(1, shape.across()) % shape.down();
        long rows = Math.min(shape.blockHeight(), shape.height() - (long) last * shape.blockHeight());
        long end = shape.offsets()[wanted - 1] + rows * shape.packedRowBytes();
        if (stored && end > file.size() && shape.across() == 1) {
            throw new Unreadable(cut(file, end));
        }
        return shape;
    }

    private static String cut(ArtBytes file, long reach) {
        return "it ends at byte " + file.size() + ", before its picture data at byte " + reach
                + ": the file is cut short";
    }

    private static int size(long pixels, String what) throws IOException {
        if (pixels < 1 || pixels > ArtFormat.SIDE_AT_MOST) {
            throw new Unreadable(
                    "its " + what + " is " + pixels + " pixels; 1 to " + ArtFormat.SIDE_AT_MOST + " can be read");
        }
        return (int) pixels;
    }

    private static int compression(int code) throws IOException {
        return switch (code) {
            case 1, 2, 3, 4, 5, 6, 7, 8, 32_773, TiffBlocks.LZMA, TiffBlocks.ZSTANDARD, TiffBlocks.WEBP -> code;
            case 32_946, 50_013 -> TiffBlocks.DEFLATE;
            case 34_661 -> throw unreadable("JBIG");
            case 34_712, 33_003, 33_005 -> throw unreadable("JPEG 2000");
            default -> throw unreadable("unknown (" + code + ")");
        };
    }

    private static Unreadable unreadable(String compression) {
        return new Unreadable("its " + compression
                + " compression can't be read: save it uncompressed or with LZW, Deflate, PackBits, JPEG or G4");
    }

    private static Interpretation meaning(TiffDirectory directory, TiffBlocks blocks) throws IOException {
        Interpretation.Model model = switch (blocks.photometric()) {
            case 0, 1 -> Interpretation.Model.GREY;
            case 2, 6 -> Interpretation.Model.RGB;
            case 3 -> Interpretation.Model.PALETTE;
            case 5 -> Interpretation.Model.CMYK;
            case 8 -> Interpretation.Model.LAB;
            default ->
                throw new Unreadable("its colours are of kind " + blocks.photometric()
                        + ", which can't be read: save it as grey, RGB or CMYK");
        };
        if (blocks.samplesPerPixel() < model.channels()) {
            // L*a*b* with L* alone is allowed; everything else needs its channels.
            if (model != Interpretation.Model.LAB) {
                throw new Unreadable(
                        "it claims " + model + " but has " + blocks.samplesPerPixel() + " samples a pixel");
            }
        }
        long[] extra = directory.numbers(338);
        int channel = model.channels();
        Interpretation.Alpha alpha = Interpretation.Alpha.STRAIGHT;
        boolean hasAlpha = extra.length > 0 && (extra[0] == 1 || extra[0] == 2) && blocks.samplesPerPixel() > channel;
        float[][] palette = model == Interpretation.Model.PALETTE ? palette(directory, blocks.bits()) : null;
        if (hasAlpha && extra[0] == 1 && palette == null) {
            alpha = Interpretation.Alpha.OVER_BLACK;
        }
        return new Interpretation(model, blocks.photometric() == 0, alpha, hasAlpha ? channel : -1, palette);
    }

    private static float[][] palette(TiffDirectory directory, int bits) throws IOException {
        long[] map = directory.numbers(320);
        int entries = 1 << Math.min(16, bits);
        if (bits > 16 || map.length < 3 * entries) {
            throw new Unreadable("its palette has " + map.length / 3 + " colours where " + entries + " are needed");
        }
        float[][] palette = new float[entries][];
        for (int i = 0; i < entries; i++) {
            palette[i] = new float[] {map[i] / 65_535f, map[entries + i] / 65_535f, map[2 * entries + i] / 65_535f, 1};
        }
        return palette;
    }
}
