package greyground.art.kind;

import greyground.art.page.ArtBytes;
import greyground.art.page.Octets;
import greyground.art.page.PackedBits;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import java.io.IOException;

/** Rows of an unpacked Windows bitmap, which usually lie from the bottom up. */
final class BmpRows implements SampleRows {
    /** Which bits of a pixel hold which colour. */
    record Masks(int red, int green, int blue, int alpha) {
        static final Masks NONE = new Masks(0, 0, 0, 0);

        static Masks read(ArtBytes file, Octets info, int headerBytes, int bits, int packing) throws IOException {
            if (packing == 0) {
                return bits == 16 ? new Masks(0x7C00, 0x03E0, 0x001F, 0) : new Masks(0xFF0000, 0x00FF00, 0x0000FF, 0);
            }
            Octets masks = headerBytes >= 52 ? info : new Octets(file.read(14, 52), false);
            int alpha = headerBytes >= 56 ? info.s32(52) : 0;
            return new Masks(masks.s32(40), masks.s32(44), masks.s32(48), alpha);
        }

        int[] all() {
            return new int[] {red, green, blue, alpha};
        }
    }

    private final ArtBytes file;
    private final long dataAt;
    private final boolean upward;
    private final Samples samples;
    private final int bits;
    private final int[] masks;
    private final byte[] packed;

    BmpRows(ArtBytes file, long dataAt, int rowBytes, boolean upward, Samples samples, int bits, Masks masks) {
        this.file = file;
        this.dataAt = dataAt;
        this.upward = upward;
        this.samples = samples;
        this.bits = bits;
        this.masks = masks.all();
        this.packed = new byte[rowBytes];
    }

    @Override
    public void read(int firstRow, int rowCount, byte[] into) throws IOException {
        for (int r = 0; r < rowCount; r++) {
            int row = firstRow + r;
            int stored = upward ? samples.height() - 1 - row : row;
            file.readFully(dataAt + (long) stored * packed.length, packed, 0, packed.length);
            unpack(into, (int) samples.bytesPerRow() * r);
        }
    }

    private void unpack(byte[] into, int at) {
        if (bits < 8) {
            PackedBits.spread(packed, 0, bits, into, at, samples.width(), false);
            return;
        }
        if (bits == 8) {
            System.arraycopy(packed, 0, into, at, samples.width());
            return;
        }
        int step = bits / 8;
        int channels = samples.channels();
        for (int x = 0; x < samples.width(); x++) {
            int pixel = 0;
            for (int b = step - 1; b >= 0; b--) {
                pixel = pixel << 8 | (packed[x * step + b] & 0xFF);
            }
            for (int c = 0; c < channels; c++) {
                into[at + x * channels + c] = octet(pixel, masks[c]);
            }
        }
    }

    /** The masked bits, stretched to 0..255. */
    private static byte octet(int pixel, int mask) {
        if (mask == 0) {
            return 0;
        }
        int shift = Integer.numberOfTrailingZeros(mask);
        long most = (long) mask >>> shift;
        long value = (long) (pixel & mask) >>> shift;
        return (byte) ((value * 255 + most / 2) / most);
    }
}
