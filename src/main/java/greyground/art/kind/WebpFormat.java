package greyground.art.kind;

import com.twelvemonkeys.imageio.plugins.webp.WebPImageReaderSpi;
import greyground.art.jpeg.JpegFormat;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Exif;
import greyground.art.page.Ink;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.RowPipe;
import greyground.art.page.RowSink;
import greyground.art.page.Samples;
import java.awt.image.Raster;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageReader;
import org.jspecify.annotations.Nullable;

/** Understands still WebP pictures (RFC 9649), decoded whole by a library, then handed on row by row. */
public final class WebpFormat implements ArtFormat {
    /** Bytes of memory for each pixel while a picture is decoded whole: the picture, and the decoder's copy of it (assumed). */
    private static final int BYTES_PER_PIXEL = 8;

    @Override
    public String kind() {
        return "WebP";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        Header header = Header.read(file);
        Samples samples = new Samples(header.width, header.height, 4, 1, true);
        long pixels = (long) header.width * header.height;
        return new Page(
                samples,
                Ink.withAlpha(Ink.Model.RGB),
                header.profile,
                header.exif.orientation(),
                header.exif.density(),
                8,
                (int) Math.max(1, Math.min(header.height, (1 << 20) / samples.bytesPerRow())),
                false,
                pixels * BYTES_PER_PIXEL,
                Page.UNBOUNDED,
                () -> new RowPipe(
                        new Whole(file, samples), (int) samples.bytesPerRow(), JpegFormat.limitSeconds(pixels)));
    }

    /** The chunks before the picture's data. */
    private static final class Header {
        private int width;
        private int height;
        private byte @Nullable [] profile;
        private Exif exif = Exif.NONE;

        static Header read(ArtBytes file) throws IOException {
            Header header = new Header();
            long end = Math.min(file.size(), 8 + new Octets(file.read(0, 12), false).u32(4));
            long at = 12;
            while (at + 8 <= end) {
                Octets head = new Octets(file.read(at, 8), false);
                long length = head.u32(4);
                header.chunk(file, head.text(0, 4), at + 8, length);
                at += 8 + length + (length & 1);
            }
            if (header.width < 1 || header.height < 1) {
                throw new IOException("it holds no picture");
            }
            if (at > file.size() + 1) {
                throw new IOException(
                        "it ends at byte " + file.size() + ", before its picture data do: the file is cut short");
            }
            return header;
        }

        private void chunk(ArtBytes file, String name, long at, long length) throws IOException {
            switch (name) {
                case "VP8X" -> {
                    Octets octets = new Octets(file.read(at, 10), false);
                    if ((octets.u8(0) & 2) != 0) {
                        throw new IOException("it is animated: save one picture of it");
                    }
                }
                case "ANIM", "ANMF" -> throw new IOException("it is animated: save one picture of it");
                case "ICCP" -> profile = file.read(at, length);
                case "EXIF" -> {
                    boolean prefixed = length > 6
                            && new Octets(file.read(at, 4), false).text(0, 4).equals("Exif");
                    exif = Exif.read(file, prefixed ? at + 6 : at);
                }
                case "VP8 " -> {
                    Octets octets = new Octets(file.read(at, 10), false);
                    width = octets.u16(6) & 0x3FFF;
                    height = octets.u16(8) & 0x3FFF;
                }
                case "VP8L" -> {
                    long size = new Octets(file.read(at + 1, 4), false).u32(0);
                    width = (int) (size & 0x3FFF) + 1;
                    height = (int) (size >> 14 & 0x3FFF) + 1;
                }
                default -> {
                    // Nothing in it bears on luminance.
                }
            }
        }
    }

    private static final class Whole implements RowPipe.Source {
        private final ArtBytes file;
        private final Samples samples;
        private final WebpInput input;

        Whole(ArtBytes file, Samples samples) {
            this.file = file;
            this.samples = samples;
            this.input = new WebpInput(file);
        }

        @Override
        public void run(RowSink sink) throws IOException {
            ImageReader reader = new WebPImageReaderSpi().createReaderInstance();
            try (input) {
                reader.setInput(input, true, true);
                Raster raster = reader.read(0).getRaster();
                if (raster.getWidth() != samples.width() || raster.getHeight() != samples.height()) {
                    throw new IOException("its picture is not the size its header says: "
                            + file.path().getFileName());
                }
                hand(raster, sink);
            } finally {
                reader.dispose();
            }
        }

        private void hand(Raster raster, RowSink sink) throws IOException {
            int width = samples.width();
            int bands = raster.getNumBands();
            int[] pixels = new int[width * bands];
            byte[] row = new byte[4 * width];
            for (int y = 0; y < samples.height(); y++) {
                raster.getPixels(raster.getMinX(), raster.getMinY() + y, width, 1, pixels);
                for (int x = 0; x < width; x++) {
                    for (int c = 0; c < 4; c++) {
                        row[4 * x + c] = c < bands ? (byte) pixels[x * bands + c] : (byte) 255;
                    }
                }
                sink.row(row, 0, row.length);
            }
        }

        @Override
        public void abort() {
            // A decoder that is not asked between rows stops at its next read.
            input.stop();
        }
    }
}
