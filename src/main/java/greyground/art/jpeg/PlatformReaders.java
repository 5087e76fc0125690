package greyground.art.jpeg;

import greyground.art.page.Unreadable;
import java.io.IOException;
import java.util.Iterator;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;

/** The Java platform's own picture readers, never a library's that answers to the same name. */
public final class PlatformReaders {
    private static final String PLATFORM = "com.sun.imageio.";

    private PlatformReaders() {}

    public static ImageReader named(String format) throws IOException {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(format);
        while (readers.hasNext()) {
            ImageReader reader = readers.next();
            if (reader.getClass().getName().startsWith(PLATFORM)) {
                return reader;
            }
            reader.dispose();
        }
        throw new Unreadable("this Java platform has no " + format + " reader");
    }
}
