package greyground.art.packing;

import greyground.art.page.ArtBytes;
import greyground.art.page.TiffDirectory;
import java.awt.image.BufferedImage;
import java.awt.image.DataBufferByte;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.function.IntUnaryOperator;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/**
 * Bytes packed by LZW, as the Java platform's own TIFF writer does it.
 *
 * @param file which holds them
 * @param plain what they were
 * @param from where in the file they begin
 * @param count how many they became
 */
public record LzwPacked(Path file, byte[] plain, long from, long count) {
    /** Packs {@code side} x {@code side} bytes as one run. */
    public static LzwPacked of(Path file, int side, IntUnaryOperator value) throws IOException {
        BufferedImage picture = new BufferedImage(side, side, BufferedImage.TYPE_BYTE_GRAY);
        byte[] plain = ((DataBufferByte) picture.getRaster().getDataBuffer()).getData();
        for (int i = 0; i < plain.length; i++) {
            plain[i] = (byte) value.applyAsInt(i);
        }
        ImageWriter writer = platformsOwn();
        ImageWriteParam how = writer.getDefaultWriteParam();
        how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
        how.setCompressionType("LZW");
        how.setTilingMode(ImageWriteParam.MODE_EXPLICIT);
        how.setTiling(side, side, 0, 0);
        Files.deleteIfExists(file);
        try (ImageOutputStream out = ImageIO.createImageOutputStream(file.toFile())) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), how);
        } finally {
            writer.dispose();
        }
        try (ArtBytes bytes = new ArtBytes(file)) {
            // Tags 324 and 325 say where a tile begins and how many bytes it takes.
            TiffDirectory directory = TiffDirectory.all(bytes, 0, 1).get(0);
            return new LzwPacked(
                    file, plain, directory.numbers(324)[0], directory.numbers(325)[0]);
        }
    }

    private static ImageWriter platformsOwn() {
        Iterator<ImageWriter> writers = ImageIO.getImageWritersByFormatName("TIFF");
        while (writers.hasNext()) {
            ImageWriter writer = writers.next();
            if (writer.getClass().getModule() == ImageIO.class.getModule()) {
                return writer;
            }
        }
        throw new IllegalStateException("this Java platform writes no TIFF");
    }
}
