package greyground.art;

import greyground.art.jpeg.JpegFormat;
import greyground.art.kind.GifFormat;
import greyground.art.kind.LibraryFormat;
import greyground.art.kind.PfmFormat;
import greyground.art.kind.PngFormat;
import greyground.art.kind.PnmFormat;
import greyground.art.kind.PsdFormat;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Unreadable;
import greyground.art.tiff.TiffFormat;
import greyground.art.webp.WebpFormat;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Tells a file's kind by its first bytes. */
final class ArtKinds {
    private static final String KNOWN =
            "TIFF, PNG, JPEG, WebP, PSD, BMP, PNM, PFM, TGA, SGI, PCX, GIF and ICO can be read";
    private static final String EXPORT = ": export the picture as TIFF or PNG";

    private static final String RAW = "it is a camera's raw file: develop it first";

    private ArtKinds() {}

    static ArtFormat tell(ArtBytes file) throws IOException {
        byte[] head = new byte[16];
        int got = file.read(0, head, 0, head.length);
        String start = new String(head, 0, got, StandardCharsets.ISO_8859_1);
        if ((start.startsWith("II*\0") && !start.startsWith("CR", 8))
                || start.startsWith("MM\0*")
                || start.startsWith("II+\0")
                || start.startsWith("MM\0+")) {
            return new TiffFormat();
        }
        if (start.startsWith("\u0089PNG\r\n\u001a\n")) {
            return new PngFormat();
        }
        if (start.startsWith("\u00ff\u00d8\u00ff")) {
            return new JpegFormat();
        }
        if (start.startsWith("RIFF") && start.startsWith("WEBP", 8)) {
            return new WebpFormat();
        }
        if (start.startsWith("8BPS\0\1") || start.startsWith("8BPS\0\2")) {
            return new PsdFormat();
        }
        if (start.startsWith("GIF8")) {
            return new GifFormat();
        }
        if (start.matches("(?s)P[1-7][\\s#].*")) {
            return new PnmFormat();
        }
        if (start.matches("(?s)P[Ff]\\s.*")) {
            return new PfmFormat();
        }
        byte[] afterHead = new byte[6];
        file.read(522, afterHead, 0, afterHead.length);
        String other = otherwise(start, new String(afterHead, StandardCharsets.ISO_8859_1));
        if (other.isEmpty()) {
            Optional<ArtFormat> known = LibraryFormat.tell(file);
            if (known.isPresent()) {
                return known.get();
            }
            other = "it is of no kind that is known here";
        }
        throw new Unreadable(other + EXPORT + " (" + KNOWN + ")");
    }

    /** What a file of a kind that can't be read is, as far as its start, and what stands at byte 522, tell; empty if they don't. */
    private static String otherwise(String start, String afterHead) {
        if (start.startsWith("%PDF")) {
            return "it is a PDF document, not a picture";
        }
        if (start.startsWith("%!PS") || start.startsWith("\u00c5\u00d0\u00d3\u00c6")) {
            return "it is a PostScript document, not a picture";
        }
        if (start.startsWith("PK\3\4") || start.startsWith("7z\u00bc\u00af") || start.startsWith("Rar!")) {
            return "it is an archive, perhaps with a password: unpack it first";
        }
        if (start.startsWith("ftyp", 4)) {
            String brand = start.substring(8, Math.max(8, Math.min(12, start.length())));
            return switch (brand) {
                case "avif", "avis" -> "it is an AVIF picture";
                case "heic", "heix", "mif1", "msf1", "hevc" -> "it is a HEIF picture";
                case "crx " -> RAW;
                default -> "it is a film, or a HEIF picture";
            };
        }
        if (start.startsWith("\0\0\0\fjP") || start.startsWith("\u00ffO\u00ffQ")) {
            return "it is a JPEG 2000 picture";
        }
        if (start.startsWith("\0\0\0\fJXL ") || start.startsWith("\u00ff\n")) {
            return "it is a JPEG XL picture";
        }
        if (start.startsWith("#?R")) {
            return "it is a Radiance picture, which does not say how bright its white is: set that first";
        }
        if (start.startsWith("v/1\1")) {
            return "it is an OpenEXR picture, which does not say how bright its white is: set that first";
        }
        if (start.matches("(?s)(FUJIFILMCCD|IIU\0|II\\*\0....CR|IIR[OS]|MMOR|.{6}HEAPCCDR|\0MRM|FOVb).*")) {
            return RAW;
        }
        if (afterHead.startsWith("\0\21\2\u00ff\14\0")) {
            return "it is a PICT drawing, whose film would depend on the machine's type faces";
        }
        if (start.startsWith("<")) {
            return "it is a text document, perhaps SVG";
        }
        return "";
    }
}
