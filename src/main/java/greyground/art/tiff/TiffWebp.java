package greyground.art.tiff;

import greyground.art.page.ArtBytes;
import greyground.art.page.Page;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import greyground.art.webp.WebpFormat;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Arrays;

/** Unpacks one strip or tile of a TIFF page that is a WebP file (compression 50 001, as its common writer has it). */
final class TiffWebp {
    private TiffWebp() {}

    static InputStream unpack(ArtBytes block, TiffBlocks blocks) throws IOException {
        Page page = WebpFormat.page(block);
        Samples found = page.samples();
        if (blocks.separate()
                || found.width() < Math.min(blocks.width(), blocks.blockWidth())
                || found.width() > blocks.blockWidth()
                || found.height() > blocks.blockHeight()
                || page.meaning().alphaChannel() >= blocks.blockSamples()) {
            throw new Unreadable("a WebP strip or tile of " + found.width() + " x " + found.height()
                    + " pixels does not fit the page: save it uncompressed or with LZW or Deflate");
        }
        byte[] stored = new byte[Math.toIntExact(found.bytes())];
        try (SampleRows rows = page.rows().open()) {
            rows.read(0, found.height(), stored);
        }
        // A block all of whose pixels are opaque may come without their alpha.
        byte[] wanted = new byte[blocks.blockWidth() * blocks.blockSamples() * found.height()];
        Arrays.fill(wanted, (byte) 255);
        for (int y = 0; y < found.height(); y++) {
            for (int x = 0; x < found.width(); x++) {
                System.arraycopy(
                        stored,
                        (y * found.width() + x) * found.channels(),
                        wanted,
                        (y * blocks.blockWidth() + x) * blocks.blockSamples(),
                        found.channels());
            }
        }
        return new ByteArrayInputStream(wanted);
    }
}
