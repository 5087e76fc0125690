package greyground.art;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.TreeMap;

/** Writes small uncompressed little-endian TIFF files, for what the tools don't write: any profile, orientation or lie. */
final class TestTiff {
    private final TreeMap<Integer, long[]> entries = new TreeMap<>();
    private byte[] profile = new byte[0];
    private byte[] data = new byte[0];

    /** {@code samples} are 16-bit, interleaved. */
    static TestTiff of(int width, int height, int channels, int photometric, int... samples) {
        TestTiff tiff = new TestTiff();
        ByteBuffer bytes = ByteBuffer.allocate(2 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int sample : samples) {
            bytes.putShort((short) sample);
        }
        tiff.data = bytes.array();
        return tiff.with(256, width)
                .with(257, height)
                .with(258, 16)
                .with(259, 1)
                .with(262, photometric)
                .with(273, 8)
                .with(277, channels)
                .with(278, height)
                .with(279, tiff.data.length);
    }

    TestTiff with(int tag, long value) {
        entries.put(tag, new long[] {4, value});
        return this;
    }

    TestTiff withShort(int tag, int value) {
        entries.put(tag, new long[] {3, value});
        return this;
    }

    TestTiff profile(byte[] bytes) {
        profile = bytes;
        return this;
    }

    byte[] bytes() {
        int profileAt = 8 + data.length;
        int directoryAt = (profileAt + profile.length + 1) / 2 * 2;
        int count = entries.size() + (profile.length > 0 ? 1 : 0);
        ByteBuffer file = ByteBuffer.allocate(directoryAt + 2 + 12 * count + 4).order(ByteOrder.LITTLE_ENDIAN);
        file.put((byte) 'I')
                .put((byte) 'I')
                .putShort((short) 42)
                .putInt(directoryAt)
                .put(data)
                .put(profile);
        file.position(directoryAt);
        file.putShort((short) count);
        entries.forEach((tag, entry) -> file.putShort((short) (int) tag)
                .putShort((short) entry[0])
                .putInt(1)
                .putInt((int) entry[1]));
        if (profile.length > 0) {
            file.putShort((short) 34_675)
                    .putShort((short) 7)
                    .putInt(profile.length)
                    .putInt(profileAt);
        }
        return file.putInt(0).array();
    }
}
