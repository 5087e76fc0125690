package greyground.art;

import java.nio.file.Path;

/**
 * A picture file that has been looked into but not yet decoded.
 *
 * @param file where it lies
 * @param kind the format's name, for example "TIFF"
 * @param width pixels across, after the file's own orientation is applied
 * @param height pixels down, after the file's own orientation is applied
 * @param bitsPerSample 1, 8 or 16
 * @param pages pictures in the file, at least 1
 * @param pixelsPerInch the file's own resolution, or 0 where it states none
 */
public record Art(Path file, String kind, int width, int height, int bitsPerSample, int pages, double pixelsPerInch) {}
