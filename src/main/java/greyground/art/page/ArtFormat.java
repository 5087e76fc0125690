package greyground.art.page;

import java.io.IOException;
import java.util.List;

/** A kind of picture file. */
public interface ArtFormat {
    /** Longest side in pixels that is looked at (assumed: beyond any scanner; it keeps byte counts within range). */
    int SIDE_AT_MOST = 300_000;

    /** Understands one page when asked. */
    @FunctionalInterface
    interface PageOpener {
        /** Reads what stands before the pixels, never the pixels. */
        Page open() throws IOException;
    }

    /** The kind's name, such as "TIFF". */
    String kind();

    /** The file's pages, first to last; {@code file} stays open as long as they are used. */
    List<PageOpener> pages(ArtBytes file) throws IOException;
}
