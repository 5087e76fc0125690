package greyground.art.kind;

import com.twelvemonkeys.imageio.plugins.bmp.BMPImageReaderSpi;
import com.twelvemonkeys.imageio.plugins.bmp.ICOImageReaderSpi;
import com.twelvemonkeys.imageio.plugins.pcx.PCXImageReaderSpi;
import com.twelvemonkeys.imageio.plugins.sgi.SGIImageReaderSpi;
import com.twelvemonkeys.imageio.plugins.tga.TGAImageReaderSpi;
import greyground.art.library.LibraryInput;
import greyground.art.library.LibraryReader;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import javax.imageio.ImageReader;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.metadata.IIOMetadataFormatImpl;
import javax.imageio.spi.ImageReaderSpi;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** A kind that a library tells, understands and reads, with nothing of our own but the wall around it. */
public record LibraryFormat(String kind, Supplier<ImageReaderSpi> library, LibraryReader.Reach reach)
        implements ArtFormat {
    /** "MBED", its first letter in the highest byte. */
    private static final long EMBEDDED = 0x4D42_4544;

    /** In the order in which they are asked: the last tells its kind by plausible numbers alone. */
    private static final List<LibraryFormat> ALL = List.of(
            new LibraryFormat("BMP", BMPImageReaderSpi::new, LibraryReader.Reach.BANDS),
            new LibraryFormat("ICO", ICOImageReaderSpi::new, LibraryReader.Reach.WHOLE),
            new LibraryFormat("SGI", SGIImageReaderSpi::new, LibraryReader.Reach.BANDS),
            new LibraryFormat("PCX", PCXImageReaderSpi::new, LibraryReader.Reach.BANDS),
            new LibraryFormat("TGA", TGAImageReaderSpi::new, LibraryReader.Reach.BANDS));

    /** The kind of a file, if a library knows it. */
    public static Optional<ArtFormat> tell(ArtBytes file) throws IOException {
        for (LibraryFormat format : ALL) {
            ImageReaderSpi library = format.library.get();
            try (LibraryInput input = new LibraryInput(file)) {
                if (library.canDecodeInput(input)) {
                    return Optional.of(format);
                }
            } catch (java.io.EOFException tooShort) {
                // Then it is not of this kind.
            }
        }
        return Optional.empty();
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) throws IOException {
        LibraryReader.Maker maker = this::reader;
        byte[] profile = profile(file);
        int count = LibraryReader.ask(file, maker, reader -> reader.getNumImages(true));
        List<PageOpener> pages = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int index = i;
            pages.add(() -> {
                LibraryReader.Beside beside = new LibraryReader.Beside(
                        profile, 1, LibraryReader.ask(file, maker, reader -> density(reader, index)), List.of());
                return new LibraryReader(file, maker, index, reach).page(beside, Page.PACKED);
            });
        }
        return pages;
    }

    /** The profile within a BMP whose header, in its fifth version of 124 bytes, says that it is there. */
    private static byte @Nullable [] profile(ArtBytes file) throws IOException {
        byte[] start = new byte[14 + 124];
        Octets head = new Octets(start, false);
        boolean fifth = file.read(0, start, 0, start.length) == start.length
                && head.text(0, 2).equals("BM")
                && head.u32(14) >= 124;
        return fifth && head.u32(14 + 56) == EMBEDDED ? file.read(14 + head.u32(14 + 112), head.u32(14 + 116)) : null;
    }

    private ImageReader reader() throws IOException {
        return library.get().createReaderInstance(null);
    }

    private static PixelDensity density(ImageReader reader, int index) throws IOException {
        IIOMetadata metadata = reader.getImageMetadata(index);
        if (metadata == null) {
            return PixelDensity.NONE;
        }
        Element tree = (Element) metadata.getAsTree(IIOMetadataFormatImpl.standardMetadataFormatName);
        return PixelDensity.perCentimetre(
                10 / millimetres(tree, "HorizontalPixelSize"), 10 / millimetres(tree, "VerticalPixelSize"));
    }

    /** A pixel's size; not a number where it is not stated. */
    private static double millimetres(Element tree, String name) {
        NodeList found = tree.getElementsByTagName(name);
        return found.getLength() == 0
                ? Double.NaN
                : Double.parseDouble(((Element) found.item(0)).getAttribute("value"));
    }
}
