package greyground.art.webp;

import com.twelvemonkeys.imageio.plugins.webp.WebPImageReaderSpi;
import greyground.art.library.LibraryInput;
import greyground.art.library.LibraryReader;
import greyground.art.library.MovingPictures;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Exif;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageReader;
import org.jspecify.annotations.Nullable;

/** Understands WebP pictures (RFC 9649), of moving ones the first frame, decoded whole: lossy ones by a library. */
public final class WebpFormat implements ArtFormat {
    private static final int CHUNKS_AT_MOST = 10_000;
    /** Bits of the extended header's first byte: RFC 9649, 2.7.1. */
    private static final int MOVING = 2;

    private static final int ALPHA = 16;

    @Override
    public String kind() {
        return "WebP";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    /** The picture that {@code file} is. */
    public static Page page(ArtBytes file) throws IOException {
        Header header = Header.read(file);
        LibraryReader.Beside beside = new LibraryReader.Beside(
                header.profile,
                header.exif == null ? 1 : header.exif.orientation(),
                header.exif == null ? PixelDensity.NONE : header.exif.density(),
                header.frames > 1 ? List.of(MovingPictures.remark(header.frames)) : List.of());
        if (header.losslessAt > 0) {
            return LosslessPicture.page(file, header.losslessAt, header.losslessBytes, header.alpha, beside);
        }
        Page page = new LibraryReader(file, header, 0, LibraryReader.Reach.WHOLE).page(beside, Page.UNBOUNDED);
        return header.alphaAt == 0 ? page : WebpAlpha.added(page, file, header.alphaAt, header.alphaBytes);
    }

    /** The chunks, up to the first picture's last. */
    private static final class Header implements LibraryReader.Maker {
        private boolean moving;
        private boolean pictured;
        private boolean alpha;
        private int canvasWidth;
        private int canvasHeight;
        private int frames;
        private long lossyAt;
        private long losslessAt;
        private long losslessBytes;
        private long alphaAt;
        private long alphaBytes;
        private byte @Nullable [] profile;
        private @Nullable Exif exif;

        static Header read(ArtBytes file) throws IOException {
            Header header = new Header();
            long end = Math.min(file.size(), 8 + new Octets(file.read(0, 12), false).u32(4));
            long after = header.chunks(file, 12, end);
            if (!header.pictured) {
                throw new Unreadable("it holds no picture");
            }
            if (after > file.size() + 1) {
                throw new Unreadable(
                        "it ends at byte " + file.size() + ", before its picture data do: the file is cut short");
            }
            return header;
        }

        private long chunks(ArtBytes file, long from, long end) throws IOException {
            long at = from;
            for (int i = 0; i < CHUNKS_AT_MOST && at + 8 <= end; i++) {
                Octets head = new Octets(file.read(at, 8), false);
                long length = head.u32(4);
                chunk(file, head.text(0, 4), at + 8, length);
                at += 8 + length + (length & 1);
            }
            return at;
        }

        private void chunk(ArtBytes file, String name, long at, long length) throws IOException {
            switch (name) {
                case "VP8X" -> {
                    Octets octets = new Octets(file.read(at, 10), false);
                    moving = (octets.u8(0) & MOVING) != 0;
                    alpha = moving && (octets.u8(0) & ALPHA) != 0;
                    canvasWidth = (int) (octets.u32(4) & 0xFF_FFFF) + 1;
                    canvasHeight = (int) (octets.u32(6) >> 8) + 1;
                }
                case "ANMF" -> frame(file, at, length);
                case "ICCP" -> profile = profile == null ? file.read(at, length) : profile;
                case "EXIF" -> {
                    boolean prefixed = length > 6
                            && new Octets(file.read(at, 4), false).text(0, 4).equals("Exif");
                    exif = exif == null ? Exif.read(file, prefixed ? at + 6 : at) : exif;
                }
                case "ALPH" -> {
                    if (!pictured) {
                        alphaAt = at;
                        alphaBytes = length;
                    }
                }
                case "VP8 " -> {
                    if (!pictured) {
                        EdgeSmoothing.check(file, at);
                        lossyAt = at - 8;
                    }
                    pictured = true;
                }
                case "VP8L" -> {
                    // RFC 9649, 3.4: the last bit but three says whether alpha is used.
                    boolean used = (new Octets(file.read(at + 1, 4), false).u32(0) >> 28 & 1) != 0;
                    if (!pictured) {
                        alpha = moving ? alpha : used;
                        losslessAt = at;
                        losslessBytes = length;
                    }
                    pictured = true;
                }
                default -> {
                    // Nothing in it bears on luminance.
                }
            }
        }

        /** A moving picture's frame: 2.7.1.1. */
        private void frame(ArtBytes file, long at, long length) throws IOException {
            frames++;
            if (frames > 1) {
                return;
            }
            Octets octets = new Octets(file.read(at, 16), false);
            boolean whole = (octets.u32(0) & 0xFF_FFFF) == 0
                    && octets.u32(2) >> 8 == 0
                    && (octets.u32(6) & 0xFF_FFFF) + 1 == canvasWidth
                    && octets.u32(8) >> 8 == canvasHeight - 1;
            if (!whole) {
                throw new Unreadable(MovingPictures.PART);
            }
            chunks(file, at + 16, Math.min(file.size(), at + length));
        }

        @Override
        public ImageReader make() throws IOException {
            return new WebPImageReaderSpi().createReaderInstance();
        }

        /** The lossy picture as if it stood alone: its profile would be applied, and its alpha be added, twice. */
        @Override
        public LibraryInput input(ArtBytes file) throws IOException {
            return new LibraryInput(file.read(0, 12), file.part(lossyAt, file.size()));
        }
    }
}
