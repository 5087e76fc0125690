package greyground.art.kind;

import greyground.art.page.ArtBytes;
import greyground.art.page.ArtFormat;
import greyground.art.page.Ink;
import greyground.art.page.Octets;
import greyground.art.page.Page;
import greyground.art.page.PixelDensity;
import greyground.art.page.Samples;
import java.io.IOException;
import java.util.List;

/** Understands Windows bitmaps that are not run-packed: 1, 4, 8, 16, 24 and 32 bits a pixel. */
public final class BmpFormat implements ArtFormat {
    @Override
    public String kind() {
        return "BMP";
    }

    @Override
    public List<PageOpener> pages(ArtBytes file) {
        return List.of(() -> page(file));
    }

    private static Page page(ArtBytes file) throws IOException {
        Octets head = new Octets(file.read(0, 30), false);
        long dataAt = head.u32(10);
        int headerBytes = head.s32(14);
        if (headerBytes < 40 || headerBytes > 1024) {
            throw new IOException(
                    "its header of " + headerBytes + " bytes is of a kind that can't be read: save it as TIFF");
        }
        Octets info = new Octets(file.read(14, headerBytes), false);
        int width = info.s32(4);
        int signedHeight = info.s32(8);
        long height = Math.abs((long) signedHeight);
        if (width < 1 || height < 1 || width > SIDE_AT_MOST || height > SIDE_AT_MOST) {
            throw new IOException("it claims " + width + " x " + signedHeight + " pixels; sides of 1 to " + SIDE_AT_MOST
                    + " can be read");
        }
        int bits = info.u16(14);
        int packing = info.s32(16);
        if (packing != 0 && packing != 3 && packing != 6) {
            throw new IOException(
                    "it is packed in way " + packing + ", which can't be read: save it unpacked, or as PNG");
        }
        if (bits != 1 && bits != 4 && bits != 8 && bits != 16 && bits != 24 && bits != 32) {
            throw new IOException("it has " + bits + " bits a pixel; 1, 4, 8, 16, 24 and 32 can be read");
        }
        boolean indexed = bits <= 8;
        BmpRows.Masks masks = indexed ? BmpRows.Masks.NONE : BmpRows.Masks.read(file, info, headerBytes, bits, packing);
        boolean alpha = masks.alpha() != 0;
        Samples samples = new Samples(width, (int) height, indexed ? 1 : alpha ? 4 : 3, 1, true);
        long rowBytes = ((long) width * bits + 31) / 32 * 4;
        if (dataAt + rowBytes * height > file.size()) {
            throw new IOException("it ends at byte " + file.size() + ", before its picture data do at byte "
                    + (dataAt + rowBytes * height) + ": the file is cut short");
        }
        Ink ink = indexed
                ? Ink.palette(palette(file, 14L + headerBytes, info.u32(32), bits))
                : alpha ? Ink.withAlpha(Ink.Model.RGB) : Ink.plain(Ink.Model.RGB);
        boolean upward = signedHeight > 0;
        return new Page(
                samples,
                ink,
                null,
                1,
                PixelDensity.perCentimetre(info.u32(24) / 100.0, info.u32(28) / 100.0),
                Math.min(8, bits),
                (int) Math.max(1, Math.min(height, (1 << 20) / samples.bytesPerRow())),
                true,
                0,
                Page.PACKED,
                () -> new BmpRows(file, dataAt, (int) rowBytes, upward, samples, bits, masks));
    }

    private static float[][] palette(ArtBytes file, long at, long stated, int bits) throws IOException {
        int entries = (int) (stated == 0 ? 1 << bits : Math.min(stated, 1 << bits));
        byte[] map = file.read(at, 4L * entries);
        float[][] palette = new float[entries][];
        for (int i = 0; i < entries; i++) {
            palette[i] = new float[] {
                (map[4 * i + 2] & 0xFF) / 255f, (map[4 * i + 1] & 0xFF) / 255f, (map[4 * i] & 0xFF) / 255f, 1
            };
        }
        return palette;
    }
}
