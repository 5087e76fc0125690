package greyground.art.kind;

import greyground.art.jpeg.PlatformReaders;
import greyground.art.library.LibraryReader;
import greyground.art.library.MovingPictures;
import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.List;
import javax.imageio.ImageReader;

/** Understands the first picture of a GIF file (its public description, version 89a), read by the platform's reader. */
public final class GifFormat implements ArtFormat {
    @Override
    public String kind() {
        return "GIF";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        LibraryReader.Maker maker = () -> PlatformReaders.named("gif");
        int[] found = LibraryReader.ask(file, maker, GifFormat::look);
        Octets screen = new Octets(file.read(6, 4), false);
        if (found[0] < screen.u16(0) || found[1] < screen.u16(2)) {
            throw new Unreadable(MovingPictures.PART);
        }
        LibraryReader.Beside beside = new LibraryReader.Beside(
                null, 1, PixelDensity.NONE, found[2] > 1 ? List.of(MovingPictures.remark(found[2])) : List.of());
        return new LibraryReader(file, maker, 0, LibraryReader.Reach.BANDS).page(beside, Page.PACKED);
    }

    /** The first picture's width and height, and the number of pictures. */
    private static int[] look(ImageReader reader) throws IOException {
        return new int[] {reader.getWidth(0), reader.getHeight(0), reader.getNumImages(true)};
    }
}
