package greyground.art.page;

import java.io.IOException;
import java.util.List;

/**
 * What a camera or scanner says about the picture in EXIF: which way is up, and the resolution. Damaged EXIF says nothing.
 *
 * @param orientation 1 to 8
 * @param density the resolution, if stated
 */
public record Exif(int orientation, PixelDensity density) {
    public static final Exif NONE = new Exif(1, PixelDensity.NONE);

    /** Reads EXIF whose TIFF structure starts at {@code base}. */
    public static Exif read(ArtBytes file, long base) {
        try {
            List<TiffDirectory> directories = TiffDirectory.all(file, base, 1);
            if (directories.isEmpty()) {
                return NONE;
            }
            TiffDirectory first = directories.get(0);
            return new Exif(first.orientation(), first.density());
        } catch (IOException damaged) {
            return NONE;
        }
    }
}
