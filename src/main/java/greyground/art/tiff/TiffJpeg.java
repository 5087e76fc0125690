package greyground.art.tiff;

import greyground.art.jpeg.JpegDecoder;
import greyground.art.jpeg.JpegHeader;
import greyground.art.page.ArtBytes;
import greyground.art.page.Unreadable;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/** Unpacks one JPEG strip or tile of a TIFF page (TIFF Technical Note 2). */
final class TiffJpeg {
    private TiffJpeg() {}

    static InputStream unpack(ArtBytes file, TiffBlocks blocks, long from, long count) throws IOException {
        long end = Math.min(file.size(), from + count);
        JpegHeader header = JpegHeader.read(file, from, end);
        if (header.width() < Math.min(blocks.width(), blocks.blockWidth())
                || header.width() > blocks.blockWidth()
                || header.height() > blocks.blockHeight()
                || header.components() != blocks.blockSamples()) {
            throw new Unreadable("a JPEG strip or tile of " + header.width() + " x " + header.height() + " pixels and "
                    + header.components() + " components does not fit the page");
        }
        int rowBytes = blocks.blockWidth() * blocks.blockSamples();
        ByteArrayOutputStream rows = new ByteArrayOutputStream(Math.multiplyExact(rowBytes, header.height()));
        byte[] margin = new byte[rowBytes - header.width() * blocks.blockSamples()];
        try (JpegDecoder decoder = new JpegDecoder()) {
            decoder.decode(
                    file, header, tables(blocks.jpegTables()), blocks.photometric() == 6, end, (bytes, at, n) -> {
                        rows.write(bytes, at, n);
                        rows.write(margin, 0, margin.length);
                    });
        }
        return new ByteArrayInputStream(rows.toByteArray());
    }

    /** The shared tables' segments, without the marks of a stream's start and end. */
    private static byte[] tables(byte[] stream) {
        if (stream.length < 4) {
            return new byte[0];
        }
        boolean closed = stream[stream.length - 2] == (byte) 0xFF && stream[stream.length - 1] == (byte) 0xD9;
        return Arrays.copyOfRange(stream, 2, closed ? stream.length - 2 : stream.length);
    }
}
