package greyground.art.jpeg;

import greyground.art.page.RowSink;
import java.awt.Point;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.DataBufferByte;
import java.awt.image.PixelInterleavedSampleModel;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.io.IOException;
import java.io.UncheckedIOException;

/**
 * A picture without pixels: whatever row a decoder sets in it goes straight to a {@link RowSink}. The platform's JPEG reader
 * sets each finished row once a pass, from the top down, so a picture of any height passes through the memory of one row. Of
 * a progressive picture it gives every pass, coarse to fine, of which only the last goes on.
 */
final class StreamedRaster extends WritableRaster {
    private final RowSink sink;
    private final byte[] row;
    private int passes;
    private int rows;

    private StreamedRaster(PixelInterleavedSampleModel model, byte[] row, int passes, RowSink sink) {
        super(model, new DataBufferByte(row, row.length), new Point());
        this.row = row;
        this.passes = passes;
        this.sink = sink;
    }

    /** An image of {@code channels} 1 (grey) or 3 (RGB) whose pixels go to {@code sink} in the last of {@code passes}. */
    static BufferedImage image(int width, int height, int channels, int passes, RowSink sink) {
        int space = channels == 1 ? java.awt.color.ColorSpace.CS_GRAY : java.awt.color.ColorSpace.CS_sRGB;
        ColorModel colours = new ComponentColorModel(
                java.awt.color.ColorSpace.getInstance(space), false, false, ColorModel.OPAQUE, DataBuffer.TYPE_BYTE);
        int[] bands = channels == 1 ? new int[] {0} : new int[] {0, 1, 2};
        PixelInterleavedSampleModel model =
                new PixelInterleavedSampleModel(DataBuffer.TYPE_BYTE, width, height, channels, width * channels, bands);
        return new BufferedImage(
                colours, new StreamedRaster(model, new byte[width * channels], passes, sink), false, null);
    }

    /** Whether every row of the last pass has come. */
    boolean complete() {
        return passes == 1 && rows == height;
    }

    @Override
    public void setRect(int dx, int dy, Raster source) {
        if (rows == height && passes > 1) {
            passes--;
            rows = 0;
        }
        if (dx != 0 || dy != rows || source.getHeight() != 1 || source.getWidth() != width) {
            throw new IllegalStateException("the JPEG reader gave row " + dy + " where row " + rows + " was due");
        }
        rows++;
        if (passes > 1) {
            return;
        }
        source.getDataElements(source.getMinX(), source.getMinY(), width, 1, row);
        try {
            sink.row(row, 0, row.length);
        } catch (IOException stopped) {
            throw new UncheckedIOException(stopped);
        }
    }
}
