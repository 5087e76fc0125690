package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.raster.GreyPlane;
import greyground.tone.Lightness;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class ArtColourTest {
    @TempDir
    Path folder;

    private int[] decode(TestTiff tiff) throws Exception {
        Path file = folder.resolve("art.tif");
        Files.write(file, tiff.bytes());
        try (GreyPlane plane = Picture.decode(file)) {
            return Picture.samples(plane);
        }
    }

    @Test
    void untaggedArtIsStandardRgb() throws Exception {
        // IEC 61966-2-1 decoding of 128 and 10; (200, 120, 60) adapted to D50 by CSS Color 4's matrices.
        int[] found = decode(TestTiff.of(3, 1, 3, 2, join(rgb(128, 128, 128), rgb(10, 10, 10), rgb(200, 120, 60))));
        assertEquals(0.215861, found[0] / 65_535.0, 1e-5);
        assertEquals(0.00303527, found[1] / 65_535.0, 1e-5);
        assertEquals(0.265893, found[2] / 65_535.0, 2e-5);
    }

    /** One picture, one luminance, whether its sRGB is said or assumed; the published colorants have another fourth figure. */
    @Test
    void standardRgbWithAndWithoutItsProfilePrintsAlike() throws Exception {
        int[] samples = new Random(12).ints(3 * 2000, 0, 65_536).toArray();
        int[] assumed = decode(TestTiff.of(2000, 1, 3, 2, samples));
        int[] said = decode(TestTiff.of(2000, 1, 3, 2, samples).profile(TestProfiles.standardRgb()));
        for (int i = 0; i < said.length; i++) {
            assertEquals(lightness(said[i]), lightness(assumed[i]), 0.05, "pixel " + i);
        }
    }

    private static double lightness(int code) {
        return Lightness.ofLuminance(code / 65_535.0);
    }

    /** Colour with equal channels is the grey that grey art of the same code is. */
    @Test
    void neutralColourIsGrey() throws Exception {
        int[] codes = IntStream.range(0, 256).map(code -> 257 * code).toArray();
        int[] colours = IntStream.of(codes)
                .flatMap(code -> IntStream.of(code, code, code))
                .toArray();
        assertArrayEquals(decode(TestTiff.of(256, 1, 1, 1, codes)), decode(TestTiff.of(256, 1, 3, 2, colours)));
    }

    private static int[] rgb(int red, int green, int blue) {
        return new int[] {257 * red, 257 * green, 257 * blue};
    }

    private static int[] join(int[]... parts) {
        return Stream.of(parts).flatMapToInt(java.util.Arrays::stream).toArray();
    }

    @Test
    void sixteenBitsAreKept() throws Exception {
        int[] samples = new int[65_536];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = i;
        }
        int[] found = decode(TestTiff.of(256, 256, 1, 1, samples).profile(TestProfiles.grey(TestProfiles.gamma(1))));
        for (int i = 0; i < samples.length; i++) {
            assertEquals(i, found[i], "a linear grey sample is its own luminance");
        }
    }

    @Test
    void transparentArtLiesOverPaperWhite() throws Exception {
        int[] pixels = {0, 0, 0, 0, 0, 0, 0, 32_768, 32_768, 32_768, 32_768, 65_535};
        int[] found = decode(TestTiff.of(3, 1, 4, 2, pixels).withShort(338, 2));
        assertEquals(65_535, found[0]);
        // Half-transparent black over white reflects half, in linear light.
        assertEquals(32_767, found[1], 1);
        assertEquals(65_535 * Picture.linear(32_768 / 65_535.0), found[2], 1);
    }

    @Test
    void colourMixedWithAlphaIsTakenApartFirst() throws Exception {
        int[] found =
                decode(TestTiff.of(1, 1, 4, 2, 16_384, 16_384, 16_384, 32_768).withShort(338, 1));
        double straight = Picture.linear(0.5);
        assertEquals(65_535 * (0.5 * straight + 0.5), found[0], 2);
    }

    @Test
    void aProfileOfAnotherChannelCountIsPassedOverWithARemark() throws Exception {
        Path file = folder.resolve("lying.tif");
        byte[] grey = TestProfiles.grey(TestProfiles.gamma(1));
        Files.write(
                file,
                TestTiff.of(1, 1, 3, 2, 32_768, 32_768, 32_768).profile(grey).bytes());
        Art art = Art.open(file);
        assertEquals(1, art.remarks().size());
        assertTrue(art.remarks().get(0).contains("GRAY"), art.remarks()::toString);
        try (GreyPlane plane = Picture.decode(file)) {
            assertEquals(65_535 * Picture.linear(32_768 / 65_535.0), Picture.samples(plane)[0], 1);
        }
    }

    @Test
    void damagedProfilesNeverStopTheWork() throws Exception {
        Random random = new Random(7);
        List<byte[]> profiles = List.of(
                TestProfiles.rgb(TestProfiles.gamma(2.2)),
                TestProfiles.rgb(TestProfiles.parametric(4, 2.4, 0.9479, 0.0521, 0.0774, 0.0405, 0, 0)),
                TestProfiles.table("RGB ", 3, 5));
        Path file = folder.resolve("damaged.tif");
        for (int i = 0; i < 150; i++) {
            byte[] profile = profiles.get(i % profiles.size()).clone();
            for (int k = 0; k < 1 + random.nextInt(8); k++) {
                profile[random.nextInt(profile.length > 600 ? 600 : profile.length)] = (byte) random.nextInt();
            }
            Files.write(
                    file,
                    TestTiff.of(2, 1, 3, 2, 0, 0, 0, 65_535, 65_535, 65_535)
                            .profile(profile)
                            .bytes());
            try (GreyPlane plane = Picture.decode(file)) {
                assertEquals(2, plane.width());
            }
        }
    }

    static Stream<Arguments> profiles() {
        byte[] srgb = TestProfiles.parametric(3, 2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045);
        return Stream.of(
                Arguments.of("gamma 2.2", TestProfiles.rgb(TestProfiles.gamma(2.2)), 3, 30),
                Arguments.of("three gammas", TestProfiles.rgb(gammas(1.8, 2.2, 2.6)), 3, 30),
                Arguments.of("sRGB curve", TestProfiles.rgb(srgb), 3, 30),
                Arguments.of("power", TestProfiles.rgb(TestProfiles.parametric(0, 1.8)), 3, 30),
                Arguments.of("power with foot", TestProfiles.rgb(TestProfiles.parametric(1, 2.2, 0.9, 0.1)), 3, 30),
                Arguments.of(
                        "lifted power", TestProfiles.rgb(TestProfiles.parametric(2, 2.2, 0.9, 0.05, 0.02)), 3, 120),
                Arguments.of(
                        "seven numbers",
                        TestProfiles.rgb(TestProfiles.parametric(4, 2.4, 0.9479, 0.0521, 0.0774, 0.0405, 0.001, 0.0)),
                        3,
                        120),
                Arguments.of(
                        "sampled",
                        TestProfiles.rgb(TestProfiles.sampled(0, 2000, 9000, 24_000, 43_000, 65_535)),
                        3,
                        30),
                Arguments.of("grey gamma", TestProfiles.grey(TestProfiles.gamma(1.8)), 1, 30),
                Arguments.of("grey sampled", TestProfiles.grey(TestProfiles.sampled(0, 9000, 30_000, 65_535)), 1, 30),
                Arguments.of("RGB table", TestProfiles.table("RGB ", 3, 9), 3, 130),
                Arguments.of("CMYK table", TestProfiles.table("CMYK", 4, 5), 4, 130));
    }

    private static byte[][] gammas(double red, double green, double blue) {
        return new byte[][] {TestProfiles.gamma(red), TestProfiles.gamma(green), TestProfiles.gamma(blue)};
    }

    /** The outside authority is Little CMS's own calculator, relative colorimetric, to XYZ; tolerance in codes of 65 535. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("profiles")
    void profilesAgreeWithLittleCms(String name, byte[] profile, int channels, int tolerance) throws Exception {
        OutsideTools.need("transicc");
        Path icc = folder.resolve("p.icc");
        Files.write(icc, profile);
        Random random = new Random(3);
        int pixels = 60;
        int[] codes = new int[pixels * channels];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = random.nextInt(256);
        }
        // The calculator takes ink in percent, light in 0..255.
        List<String> asked = IntStream.of(codes)
                .mapToObj(code -> channels == 4 ? String.format(Locale.ROOT, "%.6f", code / 2.55) : "" + code)
                .toList();
        List<Double> expected = luminances(icc.toString(), asked);
        assertEquals(pixels, expected.size());
        int[] samples = java.util.Arrays.stream(codes).map(code -> code * 257).toArray();
        int photometric = channels == 4 ? 5 : channels == 3 ? 2 : 1;
        int[] found =
                decode(TestTiff.of(pixels, 1, channels, photometric, samples).profile(profile));
        for (int i = 0; i < pixels; i++) {
            double luminance = Math.min(1, Math.max(0, expected.get(i)));
            assertEquals(65_535 * luminance, found[i], tolerance, name + " pixel " + i);
        }
    }

    /** Untagged colour against Little CMS's own sRGB, built from chromaticities. */
    @Test
    void assumedStandardRgbAgreesWithLittleCms() throws Exception {
        OutsideTools.need("transicc");
        int[] codes = new Random(21).ints(300, 0, 256).toArray();
        List<Double> expected = luminances(
                "*sRGB", IntStream.of(codes).mapToObj(String::valueOf).toList());
        int[] found = decode(TestTiff.of(
                100, 1, 3, 2, IntStream.of(codes).map(code -> 257 * code).toArray()));
        for (int i = 0; i < 100; i++) {
            assertEquals(Lightness.ofLuminance(expected.get(i)), lightness(found[i]), 0.02, "pixel " + i);
        }
    }

    /** What Little CMS's calculator makes of device values, relative colorimetric: Y, white is 1. */
    private List<Double> luminances(String profile, List<String> values) throws Exception {
        String said = OutsideTools.run(
                folder,
                List.of("transicc", "-i" + profile, "-o*XYZ", "-t1", "-n", "-c0"),
                String.join("\n", values) + "\n");
        List<Double> found = new ArrayList<>();
        for (String line : said.split("\n")) {
            String[] words = line.strip().split("\\s+");
            if (words.length == 3 && words[0].matches("[-0-9.]+")) {
                found.add(Double.parseDouble(words[1]) / 100);
            }
        }
        return found;
    }

    @Test
    void everyOrientationPutsTheRightCornerUp() throws Exception {
        // TIFF 6.0, tag 274: where stored pixel (0, 0) and (1, 0) of a 3 x 2 picture belong.
        int[][] first = {{0, 0}, {2, 0}, {2, 1}, {0, 1}, {0, 0}, {1, 0}, {1, 2}, {0, 2}};
        int[][] second = {{1, 0}, {1, 0}, {1, 1}, {1, 1}, {0, 1}, {1, 1}, {1, 1}, {0, 1}};
        for (int orientation = 1; orientation <= 8; orientation++) {
            Path file = folder.resolve("turned" + orientation + ".tif");
            int[] samples = {10_000, 20_000, 30_000, 40_000, 50_000, 60_000};
            byte[] linear = TestProfiles.grey(TestProfiles.gamma(1));
            Files.write(
                    file,
                    TestTiff.of(3, 2, 1, 1, samples)
                            .withShort(274, orientation)
                            .profile(linear)
                            .bytes());
            for (long budget : new long[] {1L << 30, tight(file)}) {
                try (GreyPlane plane = Art.open(file).decode(greyground.raster.Progress.NONE, budget, folder)) {
                    int width = orientation < 5 ? 3 : 2;
                    assertEquals(width, plane.width());
                    int[] found = Picture.samples(plane);
                    int[] a = first[orientation - 1];
                    int[] b = second[orientation - 1];
                    assertEquals(10_000, found[a[1] * width + a[0]], "orientation " + orientation);
                    assertEquals(20_000, found[b[1] * width + b[0]], "orientation " + orientation);
                    assertEquals(210_000, java.util.Arrays.stream(found).sum());
                }
            }
        }
    }

    /** A budget that lets the file be decoded but not kept in memory. */
    private long tight(Path file) {
        long budget = 1;
        while (true) {
            try (GreyPlane plane = Art.open(file).decode(greyground.raster.Progress.NONE, budget, folder)) {
                return budget;
            } catch (greyground.quantity.Refusal tooLittle) {
                budget++;
            }
        }
    }
}
