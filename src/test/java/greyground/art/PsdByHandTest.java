package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.quantity.Refusal;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the independent writers of PSD make none of: transparency in L*a*b*, and inks that go by their names. */
class PsdByHandTest {
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

    /**
     * Four inks that are called so print as those of CMYK do; in another order, or without names, they are refused. That names stand in
     * the resource of the alpha channels' names is from memory.
     */
    @Test
    void inksThatAreNamedPrintAsThoseOfCmyk() throws Exception {
        byte[] named = "\4Cyan\7Magenta\6Yellow\5Black".getBytes(StandardCharsets.ISO_8859_1);
        byte[] mixed = "\5Black\4Cyan\7Magenta\6Yellow".getBytes(StandardCharsets.ISO_8859_1);
        try (var cmyk = Picture.decode(inks("cmyk.psd", 4, new byte[0]));
                var many = Picture.decode(inks("many.psd", 7, named))) {
            assertArrayEquals(Picture.samples(cmyk), Picture.samples(many));
        }
        for (byte[] other : new byte[][] {mixed, new byte[0]}) {
            Refusal refusal = assertThrows(
                    Refusal.class,
                    () -> Picture.decode(inks("other.psd", 7, other)).close());
            assertTrue(String.valueOf(refusal.getMessage()).contains("multichannel"), refusal.getMessage());
        }
    }

    private Path inks(String name, int mode, byte[] names) throws Exception {
        int resource = names.length == 0 ? 0 : 12 + names.length + names.length % 2;
        ByteBuffer psd = ByteBuffer.allocate(26 + 4 + 4 + resource + 4 + 2 + 4 * 3);
        psd.put("8BPS\0\1".getBytes(StandardCharsets.ISO_8859_1)).put(new byte[6]);
        psd.putShort((short) 4).putInt(1).putInt(3).putShort((short) 8).putShort((short) mode);
        psd.putInt(0).putInt(resource);
        if (names.length > 0) {
            psd.put("8BIM".getBytes(StandardCharsets.ISO_8859_1)).putShort((short) 0x03EE);
            psd.putShort((short) 0).putInt(names.length).put(names).position(34 + resource);
        }
        psd.putInt(0).putShort((short) 0);
        psd.put(new byte[] {0, 90, -1, 10, 90, -1, 20, 90, -1, -1, 90, -1});
        return Files.write(folder.resolve(name), psd.array());
    }
}
