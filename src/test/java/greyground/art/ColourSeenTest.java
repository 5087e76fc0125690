package greyground.art;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.ColourWeights;
import greyground.tone.Lightness;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Colours seen through a filter or by weights, whatever kind of art holds them. */
class ColourSeenTest {
    private static final ColourWeights RED_FILTER = new ColourWeights(0.88, 0.10, 0.02);

    /** XYZ under D50 to linear sRGB, as Lindbloom lists it (from memory). */
    private static final double[][] TO_SRGB = {
        {3.1338561, -1.6168667, -0.4906146}, {-0.9787684, 1.9161415, 0.0334540}, {0.0719453, -0.2289914, 1.4052427}
    };

    @TempDir
    Path folder;

    private int[] seen(TestTiff tiff, ColourWeights weights) throws Exception {
        return seen(Files.write(folder.resolve("art.tif"), tiff.bytes()), Optional.of(weights));
    }

    private int[] seen(Path file, Optional<ColourWeights> weights) throws Exception {
        try (GreyPlane plane = Art.open(file).decode(weights, Progress.NONE, 1L << 28, folder)) {
            return Picture.samples(plane);
        }
    }

    private static double lightness(double luminance) {
        return Lightness.ofLuminance(Math.max(0, Math.min(1, luminance)));
    }

    static Stream<Arguments> profiles() {
        return Stream.of(
                Arguments.of("sRGB", TestProfiles.standardRgb(), 3, 30),
                Arguments.of("wide primaries", TestProfiles.rgb(TestProfiles.gamma(1.8)), 3, 30),
                Arguments.of("RGB table", TestProfiles.table("RGB ", 3, 9, 15), 3, 130),
                Arguments.of("CMYK table", TestProfiles.table("CMYK", 4, 5, 15), 4, 130));
    }

    /** The outside authority is Little CMS's calculator, to XYZ, and a published matrix to linear sRGB; tolerance in codes of 65 535, as for luminance. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("profiles")
    void anyProfileGoesThroughOneLinearRgb(String name, byte[] profile, int channels, double tolerance)
            throws Exception {
        OutsideTools.need("transicc");
        Path icc = Files.write(folder.resolve("p.icc"), profile);
        int pixels = 80;
        int[] codes = new Random(9).ints((long) pixels * channels, 0, 256).toArray();
        String asked = String.join(
                "\n",
                IntStream.of(codes)
                        .mapToObj(code -> channels == 4 ? String.format(Locale.ROOT, "%.6f", code / 2.55) : "" + code)
                        .toList());
        String said =
                OutsideTools.run(folder, List.of("transicc", "-i" + icc, "-o*XYZ", "-t1", "-n", "-c0"), asked + "\n");
        List<Double> expected = new ArrayList<>();
        for (String line : said.split("\n")) {
            String[] words = line.strip().split("\\s+");
            if (words.length == 3 && words[0].matches("[-0-9.]+")) {
                double grey = 0;
                for (int light = 0; light < 3; light++) {
                    double linear = 0;
                    for (int i = 0; i < 3; i++) {
                        linear += TO_SRGB[light][i] * Double.parseDouble(words[i]) / 100;
                    }
                    grey += RED_FILTER.shares()[light] * linear;
                }
                expected.add(grey);
            }
        }
        assertEquals(pixels, expected.size());
        int[] samples = IntStream.of(codes).map(code -> 257 * code).toArray();
        int[] found = seen(
                TestTiff.of(pixels, 1, channels, channels == 4 ? 5 : 2, samples).profile(profile), RED_FILTER);
        for (int i = 0; i < pixels; i++) {
            double grey = Math.max(0, Math.min(1, expected.get(i)));
            assertEquals(65_535 * grey, found[i], tolerance, name + " pixel " + i);
        }
    }

    /** An independent program: a matrix over linear light (version 6.9 was looked at). */
    @Test
    void anRgbPictureIsAsImageMagickWeighsIt() throws Exception {
        OutsideTools.need("convert");
        int[] samples = new Random(4).ints(3 * 500, 0, 65_536).toArray();
        Path art = Files.write(
                folder.resolve("art.tif"), TestTiff.of(500, 1, 3, 2, samples).bytes());
        OutsideTools.run(
                folder,
                List.of(
                        "convert",
                        "art.tif",
                        "-colorspace",
                        "RGB",
                        "-color-matrix",
                        ".88 .10 .02 .88 .10 .02 .88 .10 .02",
                        "-channel",
                        "R",
                        "-separate",
                        "-depth",
                        "16",
                        "-endian",
                        "MSB",
                        "gray:grey.raw"),
                null);
        ByteBuffer expected = ByteBuffer.wrap(Files.readAllBytes(folder.resolve("grey.raw")));
        int[] found = seen(art, Optional.of(RED_FILTER));
        for (int code : found) {
            assertEquals(expected.getShort() & 0xFFFF, code, 3);
        }
    }

    /** Every grey of sixteen bits, in every kind of coding that has greys exactly. */
    @Test
    void greysStayWhatTheyAreBitForBit() throws Exception {
        int[] greys =
                IntStream.range(0, 65_536).flatMap(i -> IntStream.of(i, i, i)).toArray();
        for (byte[] profile :
                List.of(new byte[0], TestProfiles.standardRgb(), TestProfiles.rgb(TestProfiles.gamma(1.8)))) {
            Path file = Files.write(
                    folder.resolve("greys.tif"),
                    TestTiff.of(256, 256, 3, 2, greys).profile(profile).bytes());
            assertArrayEquals(seen(file, Optional.empty()), seen(file, Optional.of(RED_FILTER)));
        }
        int[] lightnesses =
                IntStream.range(0, 65_536).flatMap(i -> IntStream.of(i, 0, 0)).toArray();
        Path lab = Files.write(
                folder.resolve("lab.tif"),
                TestTiff.of(256, 256, 3, 8, lightnesses).bytes());
        assertArrayEquals(seen(lab, Optional.empty()), seen(lab, Optional.of(RED_FILTER)));
        int[] inks = IntStream.range(0, 65_536)
                .flatMap(i -> IntStream.of(0, 0, 0, i))
                .toArray();
        Path plain = Files.write(
                folder.resolve("inks.tif"), TestTiff.of(256, 256, 4, 5, inks).bytes());
        assertArrayEquals(seen(plain, Optional.empty()), seen(plain, Optional.of(RED_FILTER)));
    }

    /** L*a*b* of sRGB red 200,40,30 under D50 by CSS Color 4's formulas: 43.3, 62.3, 47.8; L* through a red filter 76.719. */
    @Test
    void labArtIsSeenThroughTheSameFilterInTiffAndPsd() throws Exception {
        double[] lab = lab(200, 40, 30);
        int lightness = (int) Math.round(lab[0] * 655.35);
        Path tiff = Files.write(
                folder.resolve("lab.tif"),
                TestTiff.of(
                                1,
                                1,
                                3,
                                8,
                                lightness,
                                (int) Math.round(lab[1] * 256) & 0xFFFF,
                                (int) Math.round(lab[2] * 256) & 0xFFFF)
                        .bytes());
        assertEquals(76.719, lightness(seen(tiff, Optional.of(RED_FILTER))[0] / 65_535.0), 0.05);
        ByteBuffer psd = ByteBuffer.allocate(26 + 12 + 2 + 6).order(ByteOrder.BIG_ENDIAN);
        psd.put(new byte[] {'8', 'B', 'P', 'S', 0, 1, 0, 0, 0, 0, 0, 0});
        psd.putShort((short) 3).putInt(1).putInt(1).putShort((short) 16).putShort((short) 9);
        psd.putInt(0).putInt(0).putInt(0).putShort((short) 0);
        psd.putShort((short) lightness)
                .putShort((short) Math.round((lab[1] + 128) * 256))
                .putShort((short) Math.round((lab[2] + 128) * 256));
        Path file = Files.write(folder.resolve("lab.psd"), psd.array());
        assertEquals(76.719, lightness(seen(file, Optional.of(RED_FILTER))[0] / 65_535.0), 0.05);
    }

    private static double[] lab(int... rgb) {
        double[] white = {0.9642, 1, 0.8249};
        // Linear sRGB to XYZ under D50, as Lindbloom lists it (from memory).
        double[][] matrix = {
            {0.4360747, 0.3850649, 0.1430804}, {0.2225045, 0.7168786, 0.0606169}, {0.0139322, 0.0971045, 0.7141733}
        };
        double[] f = new double[3];
        for (int row = 0; row < 3; row++) {
            double sum = 0;
            for (int c = 0; c < 3; c++) {
                sum += matrix[row][c] * Picture.linear(rgb[c] / 255.0);
            }
            double relative = sum / white[row];
            f[row] = relative > 216.0 / 24_389 ? Math.cbrt(relative) : (24_389.0 / 27 * relative + 16) / 116;
        }
        return new double[] {116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])};
    }

    @Test
    void colouredPlainInksAndPalettesAreWeighedToo() throws Exception {
        // Full magenta and yellow, plain inks: red light alone.
        int[] ink = seen(TestTiff.of(1, 1, 4, 5, 0, 65_535, 65_535, 0), RED_FILTER);
        assertEquals(0.88, ink[0] / 65_535.0, 1e-4);
        OutsideTools.need("convert");
        OutsideTools.run(
                folder, List.of("convert", "-size", "4x4", "xc:rgb(200,40,30)", "-type", "Palette", "p.gif"), null);
        int[] palette = seen(folder.resolve("p.gif"), Optional.of(RED_FILTER));
        assertEquals(76.719, lightness(palette[0] / 65_535.0), 0.01);
    }
}
