package greyground.art;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/** Builds small ICC profiles of several kinds, for the tests. */
final class TestProfiles {
    private final Map<String, byte[]> tags = new LinkedHashMap<>();
    private final String space;
    private final String connection;

    private TestProfiles(String space, String connection) {
        this.space = space;
        this.connection = connection;
        byte[] name = "test".getBytes(StandardCharsets.US_ASCII);
        tags.put(
                "desc",
                ByteBuffer.allocate(104)
                        .put("desc".getBytes(StandardCharsets.US_ASCII))
                        .putInt(0)
                        .putInt(5)
                        .put(name)
                        .array());
        tags.put(
                "cprt",
                ByteBuffer.allocate(12)
                        .put("text".getBytes(StandardCharsets.US_ASCII))
                        .putInt(0)
                        .put((byte) 'x')
                        .array());
        tags.put("wtpt", xyz(0.9642, 1, 0.8249));
    }

    /** RGB with wide primaries whose luminances sum to 1; {@code curves} for red, green and blue. */
    static byte[] rgb(byte[]... curves) {
        TestProfiles profile = new TestProfiles("RGB ", "XYZ ");
        profile.tags.put("rXYZ", xyz(0.6097, 0.3111, 0.0195));
        profile.tags.put("gXYZ", xyz(0.2053, 0.6257, 0.0609));
        profile.tags.put("bXYZ", xyz(0.1492, 0.0632, 0.7445));
        profile.tags.put("rTRC", curves[0]);
        profile.tags.put("gTRC", curves[1 % curves.length]);
        profile.tags.put("bTRC", curves[2 % curves.length]);
        return profile.bytes();
    }

    /** sRGB: colorants as Lindbloom lists them adapted to D50 by Bradford, the curve of IEC 61966-2-1. */
    static byte[] standardRgb() {
        TestProfiles profile = new TestProfiles("RGB ", "XYZ ");
        profile.tags.put("rXYZ", xyz(0.4360747, 0.2225045, 0.0139322));
        profile.tags.put("gXYZ", xyz(0.3850649, 0.7168786, 0.0971045));
        profile.tags.put("bXYZ", xyz(0.1430804, 0.0606169, 0.7141733));
        for (String curve : new String[] {"rTRC", "gTRC", "bTRC"}) {
            profile.tags.put(curve, parametric(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045));
        }
        return profile.bytes();
    }

    static byte[] grey(byte[] curve) {
        TestProfiles profile = new TestProfiles("GRAY", "XYZ ");
        profile.tags.put("kTRC", curve);
        return profile.bytes();
    }

    /** A table profile to L*a*b*: each channel but the last darkens by its weight, black multiplies; all is neutral. */
    static byte[] table(String space, int channels, int grid) {
        return table(space, channels, grid, 0);
    }

    /** The same with colour: a* is up to {@code chroma} where the first two channels differ, b* where the second and third do. */
    static byte[] table(String space, int channels, int grid, double chroma) {
        TestProfiles profile = new TestProfiles(space, "Lab ");
        int nodes = (int) Math.pow(grid, channels);
        ByteBuffer tag = ByteBuffer.allocate(52 + channels * 4 + nodes * 6 + 12);
        tag.put("mft2".getBytes(StandardCharsets.US_ASCII)).putInt(0);
        tag.put((byte) channels).put((byte) 3).put((byte) grid).put((byte) 0);
        for (int i = 0; i < 9; i++) {
            tag.putInt(i % 4 == 0 ? 65_536 : 0);
        }
        tag.putShort((short) 2).putShort((short) 2);
        for (int c = 0; c < channels; c++) {
            tag.putShort((short) 0).putShort((short) -1);
        }
        boolean ink = channels == 4;
        for (int i = 0; i < nodes; i++) {
            double lightness = 1;
            double[] values = new double[channels];
            // The first channel varies slowest in the table.
            for (int c = channels - 1, rest = i; c >= 0; c--, rest /= grid) {
                double value = rest % grid / (grid - 1.0);
                values[c] = value;
                double amount = ink ? value : 1 - value;
                lightness *= 1 - amount * (c == 3 ? 0.85 : new double[] {0.45, 0.55, 0.1}[c % 3]);
            }
            tag.putShort((short) (int) Math.round(lightness * 65_280))
                    .putShort((short) (0x8000 + Math.round(256 * chroma * (values[0] - values[1]))))
                    .putShort((short) (0x8000 + Math.round(256 * chroma * (values[1] - values[2]))));
        }
        for (int c = 0; c < 3; c++) {
            tag.putShort((short) 0).putShort((short) -1);
        }
        profile.tags.put("A2B0", tag.array());
        return profile.bytes();
    }

    static byte[] gamma(double gamma) {
        return ByteBuffer.allocate(16)
                .put("curv".getBytes(StandardCharsets.US_ASCII))
                .putInt(0)
                .putInt(1)
                .putShort((short) Math.round(gamma * 256))
                .array();
    }

    static byte[] sampled(int... nodes) {
        ByteBuffer tag = ByteBuffer.allocate(12 + nodes.length * 2 + nodes.length % 2 * 2);
        tag.put("curv".getBytes(StandardCharsets.US_ASCII)).putInt(0).putInt(nodes.length);
        for (int node : nodes) {
            tag.putShort((short) node);
        }
        return tag.array();
    }

    static byte[] parametric(int shape, double... parameters) {
        ByteBuffer tag = ByteBuffer.allocate(12 + 4 * parameters.length);
        tag.put("para".getBytes(StandardCharsets.US_ASCII))
                .putInt(0)
                .putShort((short) shape)
                .putShort((short) 0);
        for (double parameter : parameters) {
            tag.putInt((int) Math.round(parameter * 65_536));
        }
        return tag.array();
    }

    private static byte[] xyz(double x, double y, double z) {
        ByteBuffer tag = ByteBuffer.allocate(20)
                .put("XYZ ".getBytes(StandardCharsets.US_ASCII))
                .putInt(0);
        for (double value : new double[] {x, y, z}) {
            tag.putInt((int) Math.round(value * 65_536));
        }
        return tag.array();
    }

    private byte[] bytes() {
        ByteArrayOutputStream data = new ByteArrayOutputStream();
        ByteBuffer table = ByteBuffer.allocate(4 + 12 * tags.size()).putInt(tags.size());
        int start = 128 + table.capacity();
        for (Map.Entry<String, byte[]> tag : tags.entrySet()) {
            table.put(tag.getKey().getBytes(StandardCharsets.US_ASCII));
            table.putInt(start + data.size()).putInt(tag.getValue().length);
            data.writeBytes(tag.getValue());
            while (data.size() % 4 != 0) {
                data.write(0);
            }
        }
        ByteBuffer whole = ByteBuffer.allocate(start + data.size());
        whole.putInt(whole.capacity()).putInt(0).putInt(0x02400000);
        whole.put((connection.equals("Lab ") ? "prtr" : "mntr").getBytes(StandardCharsets.US_ASCII));
        whole.put(space.getBytes(StandardCharsets.US_ASCII)).put(connection.getBytes(StandardCharsets.US_ASCII));
        whole.position(36);
        whole.put("acsp".getBytes(StandardCharsets.US_ASCII));
        whole.position(68);
        whole.putInt(0xF6D6).putInt(0x10000).putInt(0xD32D);
        whole.position(128);
        return whole.put(table.array()).put(data.toByteArray()).array();
    }
}
