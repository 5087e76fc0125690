package greyground.output;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

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
        Map<String, byte[]> tags = new LinkedHashMap<>();
        String words = "Film grey, gamma 2.2";
        ByteBuffer description = ByteBuffer.allocate(112);
        // No Unicode and no script-code form: code, count, then 67 fixed bytes of the latter.
        ascii(description, "desc").putInt(0).putInt(words.length() + 1);
        ascii(description, words);
        tags.put("desc", description.array());
        ByteBuffer rights = ByteBuffer.allocate(28);
        ascii(rights, "text").putInt(0);
        ascii(rights, "No rights reserved");
        tags.put("cprt", rights.array());
        ByteBuffer white = ByteBuffer.allocate(20);
        tags.put("wtpt", xyz(ascii(white, "XYZ ").putInt(0)).array());
        ByteBuffer gamma = ByteBuffer.allocate(16);
        ascii(gamma, "curv").putInt(0).putInt(1).putShort((short) Math.round(2.2 * 256));
        tags.put("kTRC", gamma.array());
        int at = HEADER_BYTES + 4 + tags.size() * TAG_ENTRY_BYTES;
        int size = at + tags.values().stream().mapToInt(tag -> tag.length).sum();
        ByteBuffer out = ByteBuffer.allocate(size).putInt(size).putInt(0).putInt(0x02400000);
        ascii(out, "mntrGRAYXYZ ");
        // The day this profile was laid down; it belongs to the profile, not to the film.
        out.putShort((short) 2026).putShort((short) 11).putShort((short) 25);
        ascii(out.position(36), "acsp");
        // Platform, flags, maker, model, attributes and rendering intent: bytes 40 to 67, none stated.
        xyz(out.position(68));
        out.position(HEADER_BYTES).putInt(tags.size());
        for (Map.Entry<String, byte[]> tag : tags.entrySet()) {
            ascii(out, tag.getKey()).putInt(at).putInt(tag.getValue().length);
            at += tag.getValue().length;
        }
        tags.values().forEach(out::put);
        return out.array();
    }

    /** The D50 white as s15Fixed16 numbers, as the ICC header prints them: F6D6 = 0.9642, D32D = 0.8249. */
    private static ByteBuffer xyz(ByteBuffer out) {
        return out.putInt(0xF6D6).putInt(0x10000).putInt(0xD32D);
    }

    private static ByteBuffer ascii(ByteBuffer out, String words) {
        return out.put(words.getBytes(StandardCharsets.US_ASCII));
    }
}
