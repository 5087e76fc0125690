package greyground.output;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/**
 * A grey colour profile of our own, so that a film PDF carries a full output intent without anybody else's data.
 *
 * <p>Layout after ICC.1:2001-04 (version 2.4), clauses 6.1 to 6.5, from memory; accepted by independent readers in the
 * tests. Tone: device value to the power 2.2, the gamma customary for grey; a film's samples are
 * amounts of black, so the profile only matters to a viewer on a screen. White: D50, X 0.9642, Y 1, Z 0.8249 (ICC).
 */
final class GreyProfile {
    private static final int HEADER_BYTES = 128;
    private static final int TAG_ENTRY_BYTES = 12;

    private GreyProfile() {}

    static byte[] bytes() {
        try {
            return build();
        } catch (IOException impossible) {
            throw new UncheckedIOException(impossible);
        }
    }

    private static byte[] build() throws IOException {
        byte[][] tags = {description("Film grey, gamma 2.2"), words("No rights reserved"), white(), gamma()};
        String[] names = {"desc", "cprt", "wtpt", "kTRC"};
        int at = HEADER_BYTES + 4 + names.length * TAG_ENTRY_BYTES;
        int size = at;
        for (byte[] tag : tags) {
            size += tag.length;
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(size);
        DataOutputStream out = new DataOutputStream(bytes);
        header(out, size);
        out.writeInt(names.length);
        for (int i = 0; i < names.length; i++) {
            ascii(out, names[i]);
            out.writeInt(at);
            out.writeInt(tags[i].length);
            at += tags[i].length;
        }
        for (byte[] tag : tags) {
            out.write(tag);
        }
        return bytes.toByteArray();
    }

    private static void header(DataOutputStream out, int size) throws IOException {
        out.writeInt(size);
        out.writeInt(0);
        out.writeInt(0x02400000);
        ascii(out, "mntrGRAYXYZ ");
        // The day this profile was laid down; it belongs to the profile, not to the film.
        for (int part : new int[] {2026, 11, 25, 0, 0, 0}) {
            out.writeShort(part);
        }
        ascii(out, "acsp");
        // Platform, flags, maker, model, attributes and rendering intent: bytes 40 to 67, none stated.
        out.write(new byte[68 - 40]);
        xyz(out);
        out.write(new byte[HEADER_BYTES - 80]);
    }

    /** The D50 white as s15Fixed16 numbers, as the ICC header prints them: F6D6 = 0.9642, D32D = 0.8249. */
    private static void xyz(DataOutputStream out) throws IOException {
        out.writeInt(0xF6D6);
        out.writeInt(0x10000);
        out.writeInt(0xD32D);
    }

    private static byte[] description(String words) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        ascii(out, "desc");
        out.writeInt(0);
        out.writeInt(words.length() + 1);
        ascii(out, words);
        out.writeByte(0);
        // No Unicode and no script-code form: code, count, then 67 fixed bytes of the latter.
        out.write(new byte[4 + 4 + 2 + 1 + 67]);
        return padded(bytes);
    }

    private static byte[] words(String words) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        ascii(out, "text");
        out.writeInt(0);
        ascii(out, words);
        out.writeByte(0);
        return padded(bytes);
    }

    private static byte[] white() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        ascii(out, "XYZ ");
        out.writeInt(0);
        xyz(out);
        return padded(bytes);
    }

    private static byte[] gamma() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        ascii(out, "curv");
        out.writeInt(0);
        out.writeInt(1);
        out.writeShort((int) Math.round(2.2 * 256));
        return padded(bytes);
    }

    private static byte[] padded(ByteArrayOutputStream bytes) {
        while (bytes.size() % 4 != 0) {
            bytes.write(0);
        }
        return bytes.toByteArray();
    }

    private static void ascii(DataOutputStream out, String words) throws IOException {
        out.write(words.getBytes(StandardCharsets.US_ASCII));
    }
}
