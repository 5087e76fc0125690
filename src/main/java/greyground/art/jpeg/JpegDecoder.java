package greyground.art.jpeg;

import greyground.art.library.LibraryInput;
import greyground.art.page.ArtBytes;
import greyground.art.page.RowSink;
import greyground.art.page.Unreadable;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.awt.image.Raster;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import org.jspecify.annotations.Nullable;

/**
 * Decodes one JPEG stream by the platform's reader, row by row into a sink: grey as it is, luma and chroma as RGB, four
 * components as stored but without chroma. The reader sees tables, frame and scans only.
 */
public final class JpegDecoder implements AutoCloseable {
    /** Assumed: writers use about ten; every pass costs a whole decoding. */
    private static final int PASSES_AT_MOST = 100;

    // Owned by one thread; abort() alone may come from another.
    private final ImageReader reader;

    public JpegDecoder() throws IOException {
        reader = PlatformReaders.named("jpeg");
    }

    /**
     * Decodes.
     *
     * @param sharedTables segments that stand outside the stream, as TIFF keeps them; may be empty
     * @param lumaAndChroma whether components are luma and chroma
     * @param end where the stream's bytes end in the file
     */
    public void decode(
            ArtBytes file, JpegHeader header, byte[] sharedTables, boolean lumaAndChroma, long end, RowSink sink)
            throws IOException {
        String[] trouble = new String[1];
        reader.addIIOReadWarningListener((source, warning) -> {
            if (warning.contains("premature end") || warning.contains("Premature end")) {
                trouble[0] = warning;
            }
        });
        ArtBytes scans = file.part(header.scanAt(), end - header.scanAt());
        try (LibraryInput input = new LibraryInput(head(header, sharedTables, lumaAndChroma), scans)) {
            reader.setInput(input, true, true);
            if (header.components() == 4) {
                readFour(header, lumaAndChroma, sink);
            } else {
                readRows(header, passes(file, header, end), sink, trouble);
            }
        } finally {
            reader.reset();
        }
        if (trouble[0] != null) {
            throw new Unreadable("the picture data end early or are damaged");
        }
    }

    private static int passes(ArtBytes file, JpegHeader header, long end) throws IOException {
        int passes = header.inPasses() ? header.scans(file, end, PASSES_AT_MOST) : 1;
        if (passes < 1 || passes > PASSES_AT_MOST) {
            throw new Unreadable("its JPEG data come in " + passes + " passes or more; up to " + PASSES_AT_MOST
                    + " can be read: save it as baseline");
        }
        return passes;
    }

    private void readRows(JpegHeader header, int passes, RowSink sink, @Nullable String[] trouble) throws IOException {
        RowSink watched = (bytes, offset, count) -> {
            if (trouble[0] != null) {
                throw new Unreadable("the picture data end early or are damaged");
            }
            sink.row(bytes, offset, count);
        };
        BufferedImage image =
                StreamedRaster.image(header.width(), header.height(), header.components(), passes, watched);
        ImageReadParam param = reader.getDefaultReadParam();
        param.setDestination(image);
        reader.read(0, param);
        if (!((StreamedRaster) image.getRaster()).complete()) {
            throw new Unreadable("the picture data end early");
        }
    }

    private void readFour(JpegHeader header, boolean lumaAndChroma, RowSink sink) throws IOException {
        Raster raster = reader.readRaster(0, null);
        if (raster.getWidth() != header.width()
                || raster.getHeight() != header.height()
                || !(raster.getDataBuffer() instanceof DataBufferByte buffer)
                || raster.getNumBands() != 4) {
            throw new Unreadable("its JPEG data are not what their header says");
        }
        byte[] bytes = buffer.getData();
        int rowBytes = 4 * header.width();
        for (int y = 0; y < header.height(); y++) {
            if (lumaAndChroma) {
                withoutChroma(bytes, y * rowBytes, header.width());
            }
            sink.row(bytes, y * rowBytes, rowBytes);
        }
    }

    /**
     * ITU-T T.871 (JFIF) from luma and chroma to three colours, whose complements are the first three inks (the Adobe
     * marker's transform 2, from memory), in place; the fourth sample stays.
     */
    private static void withoutChroma(byte[] bytes, int from, int pixels) {
        for (int x = 0, at = from; x < pixels; x++, at += 4) {
            double y = bytes[at] & 0xFF;
            double cb = (bytes[at + 1] & 0xFF) - 128;
            double cr = (bytes[at + 2] & 0xFF) - 128;
            bytes[at] = octet(255 - (y + 1.402 * cr));
            bytes[at + 1] = octet(255 - (y - (0.114 * 1.772 * cb + 0.299 * 1.402 * cr) / 0.587));
            bytes[at + 2] = octet(255 - (y + 1.772 * cb));
        }
    }

    private static byte octet(double value) {
        return (byte) Math.round(Math.max(0, Math.min(255, value)));
    }

    private static byte[] head(JpegHeader header, byte[] sharedTables, boolean lumaAndChroma) {
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        head.write(0xFF);
        head.write(0xD8);
        if (header.components() > 1) {
            int transform = !lumaAndChroma ? 0 : header.components() == 3 ? 1 : 2;
            byte[] adobe = {
                (byte) 0xFF, (byte) 0xEE, 0, 14, 'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, (byte) transform
            };
            head.write(adobe, 0, adobe.length);
        }
        head.write(sharedTables, 0, sharedTables.length);
        byte[] tables = header.tables();
        head.write(tables, 0, tables.length);
        return head.toByteArray();
    }

    void abort() {
        try {
            reader.abort();
        } catch (IllegalStateException disposed) {
            // It came to its end meanwhile.
        }
    }

    @Override
    public void close() {
        reader.dispose();
    }
}
