package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.art.packing.Stretch;
import greyground.art.packing.Zstandard;
import greyground.art.page.ArtBytes;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against the packer that everyone else uses (the zstd command, from the distribution). */
class ZstandardTest {
    @TempDir
    Path folder;

    /** What makes a packer choose among its ways: nothing, one byte, noise, runs, skewed letters, text, far copies. */
    static Stream<byte[]> contents() {
        Random random = new Random(4);
        byte[] noise = new byte[300_000];
        random.nextBytes(noise);
        byte[] runs = new byte[500_000];
        for (int i = 0; i < runs.length; i++) {
            runs[i] = (byte) (i / 9_000);
        }
        byte[] skewed = new byte[400_000];
        for (int i = 0; i < skewed.length; i++) {
            skewed[i] = (byte) Math.min(255, Math.abs(random.nextGaussian() * 9));
        }
        byte[] far = Arrays.copyOf(noise, 6_000_000);
        System.arraycopy(noise, 0, far, 5_600_000, noise.length);
        byte[] text = IntStream.range(0, 60_000)
                .mapToObj(i -> "row " + i * 7919L % 1000 + " of " + i + (i % 3 == 0 ? "; land\n" : ", well "))
                .reduce(new StringBuilder(), StringBuilder::append, StringBuilder::append)
                .toString()
                .getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        byte[] rows = new byte[900_000];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = (byte) (i % 3000 < 2990 ? Math.sin(i % 3000 / 400.0) * 90 : random.nextInt(4));
        }
        return Stream.of(new byte[0], new byte[] {7}, new byte[200_000], noise, runs, skewed, far, text, rows);
    }

    @ParameterizedTest
    @MethodSource("contents")
    void unpacksWhatTheCommandPacks(byte[] content) throws Exception {
        Path plain = Files.write(folder.resolve("plain"), content);
        for (String options :
                new String[] {"-1", "-3", "-9", "-19", "--ultra -22", "--fast=5", "-3 --no-check", "-6 --stream-size=1"
                }) {
            String chosen = options.contains("stream") ? options.replace("=1", "=" + content.length) : options;
            byte[] packed = packed(chosen, plain);
            assertArrayEquals(content, unpacked(packed, content.length), chosen);
        }
        byte[] one = packed("-5", plain);
        byte[] twice = Arrays.copyOf(one, 2 * one.length);
        System.arraycopy(one, 0, twice, one.length, one.length);
        byte[] both = Arrays.copyOf(content, 2 * content.length);
        System.arraycopy(content, 0, both, content.length, content.length);
        assertArrayEquals(both, unpacked(twice, both.length), "two frames");
    }

    /** Whatever is damaged ends in words or in as many bytes, at once. */
    @ParameterizedTest
    @MethodSource("contents")
    void damageIsSaid(byte[] content) throws Exception {
        byte[] packed = packed("-7 --no-check", Files.write(folder.resolve("plain"), content));
        Random random = new Random(11);
        for (int i = 0; i < 300; i++) {
            byte[] damaged = packed.clone();
            for (int k = 0; k <= i % 3; k++) {
                damaged[random.nextInt(Math.min(damaged.length, 1 + random.nextInt(damaged.length)))] ^=
                        (byte) (1 << random.nextInt(8));
            }
            try {
                unpacked(damaged, content.length);
            } catch (IOException said) {
                assertTrue(said.getMessage().startsWith("the p"), said.getMessage());
            }
        }
        assertThrows(IOException.class, () -> unpacked(Arrays.copyOf(packed, packed.length - 3), content.length + 1));
    }

    private byte[] packed(String options, Path plain) throws Exception {
        Path packed = folder.resolve("packed.zst");
        OutsideTools.run(folder, "zstd -q -f " + options + " " + plain + " -o " + packed);
        return Files.readAllBytes(packed);
    }

    private byte[] unpacked(byte[] packed, int length) throws IOException {
        Path file = Files.write(folder.resolve("read"), packed);
        try (ArtBytes bytes = new ArtBytes(file)) {
            byte[] out = new byte[length];
            Zstandard zstandard = new Zstandard(new Stretch(bytes, 0, packed.length, false));
            for (int at = 0; at < length; ) {
                int some = Math.min(length - at, 70_001);
                zstandard.read(out, at, some);
                at += some;
            }
            return out;
        }
    }
}
