package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A flattened PSD's transparency, of which the independent writers make none in L*a*b*. */
class PsdAlphaTest {
    @TempDir
    Path folder;

    /** L* 50 is luminance 0.1842 (CIE 15:2004, 8.2.1.1); at alpha 0.6 over white, L* is stored as 50 * 0.6 + 100 * 0.4 = 70. */
    @Test
    void lightnessLaidOverWhiteIsTakenApart() throws Exception {
        int[] lightness = {128, 178, 255};
        int[] alpha = {255, 153, 0};
        ByteBuffer psd = ByteBuffer.allocate(26 + 4 + 4 + 4 + 6 + 2 + 12);
        psd.put("8BPS\0\1".getBytes(StandardCharsets.ISO_8859_1)).put(new byte[6]);
        psd.putShort((short) 4).putInt(1).putInt(3).putShort((short) 8).putShort((short) 9);
        // No palette, no resources; a layer section whose count of layers, -1, says that the first extra channel is
        // transparency.
        psd.putInt(0).putInt(0).putInt(6).putInt(2).putShort((short) -1);
        psd.putShort((short) 0);
        for (int sample : lightness) {
            psd.put((byte) sample);
        }
        psd.put(new byte[] {100, 100, 100, 90, 90, 90});
        for (int sample : alpha) {
            psd.put((byte) sample);
        }
        try (var plane = Picture.decode(Files.write(folder.resolve("lab.psd"), psd.array()))) {
            int[] codes = Picture.samples(plane);
            assertEquals(0.1842, codes[0] / 65_535.0, 0.002);
            assertEquals(0.6 * 0.1842 + 0.4, codes[1] / 65_535.0, 0.003);
            assertEquals(1, codes[2] / 65_535.0);
        }
    }
}
