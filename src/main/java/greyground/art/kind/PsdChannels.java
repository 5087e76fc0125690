package greyground.art.kind;

import greyground.art.packing.PackBits;
import greyground.art.packing.Stretch;
import greyground.art.packing.Unpacked;
import greyground.art.page.ArtBytes;
import greyground.art.page.Octets;
import greyground.art.page.PackedBits;
import greyground.art.page.SampleRows;
import greyground.art.page.Samples;
import greyground.art.page.Unreadable;
import java.io.IOException;
import java.nio.ByteBuffer;

/**
 * Where the channels of a flattened PSD picture lie. Each run-packed row's length is listed, so any row can be gone to.
 *
 * @param file the file
 * @param dataAt where stored channels start; for run-packed ones unused
 * @param samples the layout delivered
 * @param bits bits of a stored sample
 * @param rowAt where each run-packed row of the channels used starts; empty when stored
 */
@SuppressWarnings("ArrayRecordComponent") // Never compared, and never seen outside this package.
record PsdChannels(ArtBytes file, long dataAt, Samples samples, int bits, long[] rowAt) {
    static PsdChannels locate(ArtBytes file, long at, Samples samples, int channels, int bits, boolean large)
            throws IOException {
        int packing = new Octets(file.read(at, 2), true).u16(0);
        long rowBytes = ((long) samples.width() * bits + 7) / 8;
        if (packing == 0) {
            long end = at + 2 + rowBytes * samples.height() * samples.channels();
            if (end > file.size()) {
                throw new Unreadable("it ends at byte " + file.size() + ", before its picture data do at byte " + end
                        + ": the file is cut short");
            }
            return new PsdChannels(file, at + 2, samples, bits, new long[0]);
        }
        if (packing != 1) {
            throw new Unreadable("its flattened picture is packed in way " + packing + ", which can't be read");
        }
        int countBytes = large ? 4 : 2;
        long rows = (long) channels * samples.height();
        Octets counts = new Octets(file.read(at + 2, rows * countBytes), true);
        long[] rowAt = new long[samples.channels() * samples.height() + 1];
        rowAt[0] = at + 2 + rows * countBytes;
        for (int i = 1; i < rowAt.length; i++) {
            rowAt[i] = rowAt[i - 1] + (large ? counts.u32(4 * (i - 1)) : counts.u16(2 * (i - 1)));
        }
        if (rowAt[rowAt.length - 1] > file.size()) {
            throw new Unreadable(
                    "it ends at byte " + file.size() + ", before its picture data do: the file is cut short");
        }
        return new PsdChannels(file, 0, samples, bits, rowAt);
    }

    SampleRows reader() {
        byte[] packed = new byte[(int) (((long) samples.width() * bits + 7) / 8)];
        byte[] spread = new byte[samples.width() * samples.bytesPerSample()];
        return (firstRow, rowCount, into) -> {
            for (int r = 0; r < rowCount; r++) {
                for (int c = 0; c < samples.channels(); c++) {
                    channelRow(c, firstRow + r, packed);
                    byte[] row = packed;
                    if (bits == 1) {
                        PackedBits.spread(packed, 0, 1, spread, 0, samples.width(), true);
                        row = spread;
                    }
                    if (bits == 32) {
                        Fractions.code(ByteBuffer.wrap(packed), spread);
                        row = spread;
                    }
                    interleave(row, c, into, (int) samples.bytesPerRow() * r);
                }
            }
        };
    }

    private void channelRow(int channel, int y, byte[] packed) throws IOException {
        int row = channel * samples.height() + y;
        if (rowAt.length == 0) {
            file.readFully(dataAt + (long) row * packed.length, packed, 0, packed.length);
        } else {
            Stretch run = new Stretch(file, rowAt[row], rowAt[row + 1] - rowAt[row], false);
            Unpacked.fill(new PackBits(run), packed, 0, packed.length);
        }
    }

    private void interleave(byte[] row, int channel, byte[] into, int at) {
        int size = samples.bytesPerSample();
        int step = samples.channels() * size;
        for (int x = 0; x < samples.width(); x++) {
            for (int b = 0; b < size; b++) {
                into[at + x * step + channel * size + b] = row[x * size + b];
            }
        }
    }
}
