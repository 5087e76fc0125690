package greyground.art.kind;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Interpretation;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;

/**
 * Understands the portable float map: grey or RGB as 32-bit fractions, the last row first. They count as coded, 0 black and 1
 * white, as its writers have them (common practice), and become sixteen bits.
 */
public final class PfmFormat implements ArtFormat {
    @Override
    public String kind() {
        return "PFM";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        PnmWords words = new PnmWords(file, 0);
        boolean colour = words.word().equals("PF");
        int width = words.number(SIDE_AT_MOST, "width");
        int height = words.number(SIDE_AT_MOST, "height");
        // Its sign tells the byte order; its size is in units that no one has settled.
        double scale = scale(words.word());
        Samples samples = new Samples(width, height, colour ? 3 : 1, 2, true);
        long dataAt = words.at();
        if (width < 1 || height < 1 || file.size() - dataAt < 2 * samples.bytes()) {
            throw new Unreadable("it claims " + width + " x " + height + " pixels, for which " + 2 * samples.bytes()
                    + " bytes are needed, but has " + (file.size() - dataAt) + ": the file is cut short");
        }
        return new Page(
                samples,
                Interpretation.plain(colour ? Interpretation.Model.RGB : Interpretation.Model.GREY),
                null,
                1,
                PixelDensity.NONE,
                32,
                samples.bandRows(),
                true,
                0,
                Page.PACKED,
                () -> rows(file, dataAt, samples, scale < 0 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN));
    }

    private static double scale(String word) throws IOException {
        double scale = 0;
        try {
            scale = Double.parseDouble(word);
        } catch (NumberFormatException noNumber) {
            // Told below.
        }
        if (Math.abs(scale) != 1) {
            throw new Unreadable(
                    "its scale is " + word + "; 1 and -1 can be read: save it with 16 bits as TIFF or PNG");
        }
        return scale;
    }

    private static SampleRows rows(ArtBytes file, long dataAt, Samples samples, ByteOrder order) {
        long rowBytes = 2 * samples.bytesPerRow();
        return (firstRow, rowCount, into) -> {
            for (int r = 0; r < rowCount; r++) {
                long at = dataAt + (samples.height() - 1L - firstRow - r) * rowBytes;
                ByteBuffer row = ByteBuffer.wrap(file.read(at, rowBytes)).order(order);
                Fractions.code(row, into, (int) samples.bytesPerRow() * r);
            }
        };
    }
}
