package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import greyground.quantity.Refusal;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lossless WebP as libwebp packs and unpacks it: palettes, predictors, shares of colour, caches, groups of codes, alpha. */
class LosslessWebpTest {
    private static final String[] SETTINGS = {
        "-z 0",
        "-z 1",
        "-z 3",
        "-z 6",
        "-z 9",
        "-m 0 -q 0",
        "-m 3 -q 50",
        "-m 6 -q 100",
        "-near_lossless 20",
        "-z 9 -hint graph"
    };

    @TempDir
    Path folder;

    /** Slopes of few levels want a palette and a predictor at once; noise wants literals, repeats the cache, colour its shares. */
    private byte[] pam(int width, int height, int levels, boolean alpha, long seed) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(
                ("P7\nWIDTH " + width + "\nHEIGHT " + height + "\nDEPTH 4\nMAXVAL 255\nTUPLTYPE RGB_ALPHA\nENDHDR\n")
                        .getBytes(StandardCharsets.US_ASCII));
        Random random = new Random(seed);
        double noise = random.nextInt(3) * 0.1;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double slope = 0.5
                        + 0.3 * Math.sin(x * 0.11 + y * 0.05)
                        + 0.2 * Math.cos(y * 0.07)
                        + noise * (random.nextDouble() - 0.5);
                int level = (int) Math.max(0, Math.min(levels - 1, slope * levels));
                int grey = level * 255 / Math.max(1, levels - 1);
                out.write(grey);
                out.write(grey * 3 / 4 + 7);
                out.write(255 - grey);
                out.write(alpha ? 255 - (x * 4 / width) * 60 : 255);
            }
        }
        return out.toByteArray();
    }

    @Test
    void everySettingOpensAsLibwebpOpensIt() throws Exception {
        OutsideTools.need("cwebp");
        OutsideTools.need("dwebp");
        List<String> cases = new ArrayList<>();
        for (String setting : SETTINGS) {
            for (int levels : new int[] {1, 2, 3, 4, 5, 16, 17, 64, 256}) {
                cases.add(setting + " -lossless -exact:" + levels + ":" + cases.size() % 2);
            }
        }
        // Packed alpha beside lossy colours, which come as they are.
        for (int levels : new int[] {2, 4, 16, 256}) {
            cases.add("-q 100 -f 0 -exact -alpha_filter best:" + levels + ":1");
            cases.add("-q 100 -f 0 -exact -alpha_q 50:" + levels + ":1");
        }
        int n = 0;
        for (String one : Sweep.of(cases)) {
            String[] words = one.split(":");
            int levels = Integer.parseInt(words[1]);
            Files.write(
                    folder.resolve("a.pam"),
                    pam(61 + 50 * (n % 4), 40 + 37 * (n % 5), levels, words[2].equals("1"), n));
            OutsideTools.run(folder, "cwebp -quiet " + words[0] + " a.pam -o a.webp");
            agrees(words[0].contains("-lossless") ? 2 : 655, true, one);
            n++;
        }
        assertTrue(n > 5);
    }

    /** The file {@code a.webp} against what dwebp makes of it, over white paper where {@code clear}; {@code most} in codes of 65 535. */
    private void agrees(double most, boolean clear, String what) throws Exception {
        OutsideTools.run(folder, "dwebp -quiet -nofancy -pam a.webp -o b.pam");
        byte[] pam = Files.readAllBytes(folder.resolve("b.pam"));
        int at = new String(pam, StandardCharsets.ISO_8859_1).indexOf("ENDHDR\n") + 7;
        double worst = 0;
        try (var plane = Picture.decode(folder.resolve("a.webp"))) {
            int[] found = Picture.samples(plane);
            assertEquals(pam.length - at, 4 * found.length, what);
            for (int i = 0; i < found.length; i++, at += 4) {
                double light = 0;
                for (int c = 0; c < 3; c++) {
                    light += Picture.WEIGHTS[c] * Picture.linear((pam[at + c] & 255) / 255.0);
                }
                double alpha = clear ? (pam[at + 3] & 255) / 255.0 : 1;
                worst = Math.max(worst, Math.abs(found[i] - 65_535 * (alpha * light + 1 - alpha)));
            }
        }
        assertTrue(worst <= most, worst + " of " + what);
    }

    /** Bits, each byte's lowest first: RFC 9649, 3.2. */
    private static final class Bits {
        private final BitSet bits = new BitSet();
        private int count;

        Bits put(int number, int width) {
            for (int i = 0; i < width; i++) {
                bits.set(count++, (number >> i & 1) == 1);
            }
            return this;
        }

        /** A code of one symbol: 3.7.2.1.1. */
        Bits only(int symbol) {
            return put(1, 1).put(0, 1).put(1, 1).put(symbol, 8);
        }

        /** A code of two symbols of one bit each. */
        Bits either(int zero, int one) {
            return put(1, 1).put(1, 1).put(1, 1).put(zero, 8).put(one, 8);
        }

        /** A code of 256 symbols of eight bits each, and none of the {@code more} behind them: 3.7.2.1.2. */
        Bits octets(int more) {
            put(0, 1).put(8, 4);
            // Lengths 0 and 8 are told in one bit each, the third and the twelfth of their order.
            for (int i = 0; i < 12; i++) {
                put(i == 2 || i == 11 ? 1 : 0, 3);
            }
            put(0, 1);
            for (int i = 0; i < 256 + more; i++) {
                put(i < 256 ? 1 : 0, 1);
            }
            return this;
        }

        /** Pixels of any green below {@code greens} and, where {@code coloured}, any red, blue and alpha, without a cache. */
        Bits noise(int count, int greens, boolean coloured, Random random) {
            put(0, 1).octets(24);
            for (int c = 0; c < 3; c++) {
                octets(0);
            }
            only(0);
            for (int i = 0; i < count; i++) {
                for (int c = 0; c < 4; c++) {
                    int octet = c == 0 ? random.nextInt(greens) : coloured ? random.nextInt(256) : 0;
                    put(Integer.reverse(octet) >>> 24, 8);
                }
            }
            return this;
        }

        byte[] file() {
            byte[] data = java.util.Arrays.copyOf(bits.toByteArray(), (count + 7) / 8);
            int chunk = 1 + data.length;
            ByteBuffer file = ByteBuffer.allocate(20 + chunk + (chunk & 1)).order(ByteOrder.LITTLE_ENDIAN);
            file.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(12 + chunk + (chunk & 1));
            file.put("WEBPVP8L".getBytes(StandardCharsets.US_ASCII))
                    .putInt(chunk)
                    .put((byte) 0x2F);
            return file.put(data).array();
        }
    }

    /** Four pixels whose numbers are 0 to 3 of a palette of three whites: RFC 9649, 4.4, the fourth is clear black. */
    private static Bits beyondPalette(int alphaUsed) {
        Bits bits = new Bits().put(3, 14).put(0, 14).put(alphaUsed, 1).put(0, 3);
        bits.put(1, 1).put(3, 2).put(2, 8);
        bits.put(0, 1)
                .either(0, 255)
                .either(0, 255)
                .either(0, 255)
                .either(0, 255)
                .only(0);
        // Green, red, blue, alpha of the first entry, then noughts, which leave the others like it.
        bits.put(0b1111, 4).put(0, 8);
        bits.put(0, 1);
        return bits.put(0, 1)
                .put(0, 1)
                .only(0b11_10_01_00)
                .only(0)
                .only(0)
                .only(0)
                .only(0);
    }

    @Test
    void aNumberBeyondThePaletteIsClearBlack() throws Exception {
        Files.write(folder.resolve("a.webp"), beyondPalette(1).file());
        agrees(2, true, "alpha used");
        try (var plane = Picture.decode(folder.resolve("a.webp"))) {
            assertEquals(
                    List.of(65_535, 65_535, 65_535, 65_535),
                    java.util.Arrays.stream(Picture.samples(plane)).boxed().toList());
        }
        Files.write(folder.resolve("a.webp"), beyondPalette(0).file());
        agrees(2, false, "alpha not used");
        try (var plane = Picture.decode(folder.resolve("a.webp"))) {
            assertEquals(
                    List.of(65_535, 65_535, 65_535, 0),
                    java.util.Arrays.stream(Picture.samples(plane)).boxed().toList());
        }
    }

    /** Transforms in any order, in particular predictors of packed numbers, whose rows are narrower than the picture's. */
    @Test
    void transformsInAnyOrder() throws Exception {
        OutsideTools.need("dwebp");
        for (int seed = 0; seed < 24; seed++) {
            Random random = new Random(seed);
            int width = 20 + random.nextInt(30);
            int height = 10 + random.nextInt(20);
            Bits bits =
                    new Bits().put(width - 1, 14).put(height - 1, 14).put(1, 1).put(0, 3);
            List<Integer> kinds = new ArrayList<>(List.of(0, 1, 2, 3));
            java.util.Collections.shuffle(kinds, random);
            StringBuilder order = new StringBuilder();
            int across = width;
            for (int kind : kinds.subList(0, 1 + random.nextInt(4))) {
                order.append(kind);
                bits.put(1, 1).put(kind, 2);
                int blocks = (across + 3) / 4 * ((height + 3) / 4);
                switch (kind) {
                    case 0 -> bits.put(0, 3).noise(blocks, 16, false, random);
                    case 1 -> bits.put(0, 3).noise(blocks, 256, true, random);
                    case 3 -> {
                        int entries = List.of(2, 3, 13, 16, 100, 256).get(random.nextInt(6));
                        bits.put(entries - 1, 8).noise(entries, 256, true, random);
                        int packed = entries <= 2 ? 8 : entries <= 4 ? 4 : entries <= 16 ? 2 : 1;
                        across = (across + packed - 1) / packed;
                    }
                    default -> {}
                }
            }
            bits.put(0, 1);
            // One group of codes for all.
            int cache = bits.count;
            bits.noise(across * height, 256, true, random);
            Files.write(folder.resolve("a.webp"), insert(bits, cache + 1).file());
            agrees(2, true, "seed " + seed + ", transforms " + order);
        }
    }

    /** The picture itself says behind the cache's bit that it has one group of codes: a nought. */
    private static Bits insert(Bits bits, int at) {
        Bits more = new Bits();
        for (int i = 0; i < bits.count; i++) {
            if (i == at) {
                more.put(0, 1);
            }
            more.put(bits.bits.get(i) ? 1 : 0, 1);
        }
        return more;
    }

    /** Cut anywhere, it is refused in one line. */
    @Test
    void cutShort() throws Exception {
        OutsideTools.need("cwebp");
        Files.write(folder.resolve("a.pam"), pam(40, 30, 16, true, 3));
        OutsideTools.run(folder, "cwebp -quiet -lossless -z 9 a.pam -o a.webp");
        byte[] whole = Files.readAllBytes(folder.resolve("a.webp"));
        for (int end = 21; end < whole.length - 4; end += 7) {
            byte[] cut = java.util.Arrays.copyOf(whole, end);
            // As if nothing were missing.
            ByteBuffer.wrap(cut)
                    .order(ByteOrder.LITTLE_ENDIAN)
                    .putInt(4, end - 8)
                    .putInt(16, end - 20);
            Path file = Files.write(folder.resolve("cut.webp"), cut);
            String said = assertThrows(Refusal.class, () -> Picture.decode(file).close(), "cut at " + end)
                    .getMessage();
            assertEquals(1, said.lines().count(), said);
        }
    }
}
