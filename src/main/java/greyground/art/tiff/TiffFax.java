package greyground.art.tiff;

import greyground.art.jpeg.PlatformReaders;
import greyground.art.packing.Memory;
import greyground.art.packing.Unpacker;
import greyground.art.page.ArtBytes;
import java.awt.image.DataBufferByte;
import java.awt.image.MultiPixelPackedSampleModel;
import java.awt.image.Raster;
import java.io.IOException;
import javax.imageio.ImageReader;
import javax.imageio.stream.FileImageInputStream;

/** Unpacks fax-coded strips (modified Huffman, group 3, group 4) by the platform's TIFF reader, strip by strip. */
final class TiffFax implements AutoCloseable {
    private final ImageReader reader;
    private final FileImageInputStream input;
    private final TiffBlocks blocks;

    TiffFax(ArtBytes file, TiffBlocks blocks) throws IOException {
        this.blocks = blocks;
        this.reader = PlatformReaders.named("tiff");
        this.input = new FileImageInputStream(file.path().toFile());
        reader.setInput(input);
    }

    Unpacker block(int block) throws IOException {
        Raster tile = reader.readTile(blocks.directory(), block % blocks.across(), block / blocks.across())
                .getRaster();
        if (!(tile.getSampleModel() instanceof MultiPixelPackedSampleModel model)
                || model.getPixelBitStride() != 1
                || !(tile.getDataBuffer() instanceof DataBufferByte buffer)) {
            throw new IOException("its fax-coded data are not one bit a pixel");
        }
        int rowBytes = (int) blocks.packedRowBytes();
        byte[] packed = new byte[Math.multiplyExact(rowBytes, tile.getHeight())];
        int stride = model.getScanlineStride();
        for (int y = 0; y < tile.getHeight(); y++) {
            System.arraycopy(buffer.getData(), y * stride, packed, y * rowBytes, Math.min(stride, rowBytes));
        }
        return new Memory(packed);
    }

    @Override
    public void close() throws IOException {
        reader.dispose();
        input.close();
    }
}
