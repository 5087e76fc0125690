package greyground.art.jpeg;

import greyground.art.packing.Stretch;
import greyground.art.page.ArtBytes;
import greyground.art.page.Exif;
import greyground.art.page.Octets;
import greyground.art.page.PixelDensity;
import greyground.art.page.Unreadable;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What stands before the first scan of a JPEG stream (ITU-T T.81 annex B; JFIF, EXIF, ICC.1 annex B.4 and the Adobe marker
 * from memory). Tables are kept, application segments are read here and left out, so that the decoder never sees them.
 */
public final class JpegHeader {
    private static final int HEADER_AT_MOST = 64 << 20;
    /** Assumed: a profile and notes of that length come in about a thousand. */
    private static final int SEGMENTS_AT_MOST = 10_000;

    private final ByteArrayOutputStream tables = new ByteArrayOutputStream();
    private final TreeMap<Integer, byte[]> profileParts = new TreeMap<>();
    private int width;
    private int height;
    private int components;
    private int precision;
    private int frame;
    private int[] componentNames = new int[0];
    private int adobeTransform = -1;
    private boolean jfif;
    private @Nullable Exif exif;
    private PixelDensity density = PixelDensity.NONE;
    private long scanAt;
    private int firstScanComponents;

    private JpegHeader() {}

    /**
     * Reads the header of the stream in bytes {@code from} to {@code end} of the file.
     */
    public static JpegHeader read(ArtBytes file, long from, long end) throws IOException {
        JpegHeader header = new JpegHeader();
        Octets start = new Octets(file.read(from, 2), true);
        if (start.u16(0) != 0xFFD8) {
            throw new Unreadable("its JPEG data do not begin as JPEG");
        }
        long at = from + 2;
        long limit = Math.min(end, from + HEADER_AT_MOST);
        for (int i = 0; i < SEGMENTS_AT_MOST && at < limit; i++) {
            Octets mark = new Octets(file.read(at, 4), true);
            int marker = mark.u16(0);
            if (marker == 0xFFFF) {
                at++;
                continue;
            }
            if (marker == 0xFFDA) {
                header.scanAt = at;
                header.firstScanComponents = new Octets(file.read(at + 4, 1), true).u8(0);
                header.check();
                return header;
            }
            if (marker < 0xFFC0 || marker == 0xFFD9) {
                break;
            }
            int length = mark.u16(2);
            if (length < 2) {
                break;
            }
            header.segment(file, marker, at, file.read(at, length + 2L));
            at += length + 2;
        }
        throw new Unreadable("its JPEG data hold no picture");
    }

    private void check() throws IOException {
        // Which marker begins which kind of frame: T.81, table B.1; JPEG-LS: T.87, table C.1.
        switch (frame) {
            case 0xFFC3, 0xFFC7, 0xFFCB, 0xFFCF, 0xFFF7 -> throw unreadable("lossless");
            case 0xFFC9, 0xFFCA, 0xFFCD, 0xFFCE -> throw unreadable("arithmetic-coded");
            case 0xFFC5, 0xFFC6 -> throw unreadable("hierarchical");
            default -> {
                // Baseline, extended or progressive.
            }
        }
        if (width < 1 || height < 1) {
            throw new Unreadable("its JPEG data state a size of " + width + " x " + height + " pixels");
        }
        if (precision != 8) {
            throw new Unreadable("its JPEG samples have " + precision
                    + " bits; 8 can be read: save it as TIFF or PNG with" + " 16 bits, or as JPEG with 8");
        }
        if (components != 1 && components != 3 && components != 4) {
            throw new Unreadable("its JPEG data have " + components + " components; 1, 3 and 4 can be read");
        }
    }

    private static Unreadable unreadable(String coding) {
        return new Unreadable("its JPEG data are " + coding
                + ", which can't be read: save it as baseline or progressive JPEG, or as TIFF or PNG");
    }

    private void segment(ArtBytes file, int marker, long at, byte[] bytes) throws IOException {
        Octets octets = new Octets(bytes, true);
        boolean framing = marker <= 0xFFCF && marker != 0xFFC4 && marker != 0xFFC8 && marker != 0xFFCC;
        if (framing || marker == 0xFFF7) {
            frame = marker;
            precision = octets.u8(4);
            height = octets.u16(5);
            width = octets.u16(7);
            components = octets.u8(9);
            componentNames = new int[components];
            for (int i = 0; i < components; i++) {
                componentNames[i] = octets.u8(10 + 3 * i);
            }
            tables.write(bytes);
        } else if (marker >= 0xFFE0 && marker <= 0xFFEF) {
            application(file, marker, at, octets);
        } else if (marker != 0xFFFE) {
            tables.write(bytes);
        }
    }

    private void application(ArtBytes file, int marker, long at, Octets octets) throws IOException {
        int length = octets.bytes().length;
        if (marker == 0xFFE0 && length >= 16 && octets.text(4, 5).equals("JFIF\0")) {
            jfif = true;
            PixelDensity stated = switch (octets.u8(11)) {
                case 1 -> PixelDensity.perInch(octets.u16(12), octets.u16(14));
                case 2 -> PixelDensity.perCentimetre(octets.u16(12), octets.u16(14));
                default -> PixelDensity.NONE;
            };
            density = stated.across() > 0 ? stated : density;
        } else if (marker == 0xFFE1 && length > 18 && octets.text(4, 6).equals("Exif\0\0")) {
            exif = exif == null ? Exif.read(file, at + 10) : exif;
        } else if (marker == 0xFFE2 && length > 18 && octets.text(4, 12).equals("ICC_PROFILE\0")) {
            profileParts.put(octets.u8(16), java.util.Arrays.copyOfRange(octets.bytes(), 18, length));
        } else if (marker == 0xFFEE && length >= 16 && octets.text(4, 5).equals("Adobe")) {
            adobeTransform = octets.u8(15);
        }
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    public int components() {
        return components;
    }

    /** Whether the picture comes in several passes, which must all be read before its first row is known. */
    boolean inPasses() {
        return frame == 0xFFC2 || firstScanComponents < components;
    }

    /** Whether the Adobe marker is there; its writers store CMYK the other way round (common practice). */
    boolean adobe() {
        return adobeTransform >= 0;
    }

    /** Whether three components are luma and chroma, or four are luma, chroma and black. */
    boolean lumaAndChroma() {
        if (adobe()) {
            return adobeTransform != 0;
        }
        boolean namedRgb =
                components == 3 && componentNames[0] == 'R' && componentNames[1] == 'G' && componentNames[2] == 'B';
        return components == 3 && (jfif || !namedRgb);
    }

    /**
     * Scans from the first to the end of the stream, at most one more than {@code most}. In entropy-coded data a marker's
     * first byte is always followed by 0 or a restart number (T.81 B.1.1.5), so a start of scan can't be mistaken.
     */
    int scans(ArtBytes file, long end, int most) throws IOException {
        Stretch run = new Stretch(file, scanAt, end - scanAt, false);
        int scans = 0;
        int before = 0;
        for (int octet = run.read(); octet >= 0 && scans <= most; octet = run.read()) {
            if (before == 0xFF && octet >= 0xC0 && (octet < 0xD0 || octet > 0xD8) && octet != 0xFF) {
                scans += octet == 0xDA ? 1 : 0;
                if (octet == 0xD9) {
                    break;
                }
                // A segment of tables may hold anything, so its length is gone over.
                for (int left = (run.read() << 8 | run.read()) - 2; left > 0 && run.read() >= 0; left--) {
                    octet = 0;
                }
            }
            before = octet;
        }
        return scans;
    }

    int orientation() {
        return exif == null ? 1 : exif.orientation();
    }

    PixelDensity density() {
        return density.across() > 0 || exif == null ? density : exif.density();
    }

    byte @Nullable [] profile() {
        if (profileParts.isEmpty()) {
            return null;
        }
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        for (byte[] part : profileParts.values()) {
            whole.write(part, 0, part.length);
        }
        return whole.toByteArray();
    }

    /** Quantisation and Huffman tables and the frame, as they lie. */
    byte[] tables() {
        return tables.toByteArray();
    }

    /** Where the first scan starts. */
    long scanAt() {
        return scanAt;
    }
}
