package greyground.art.printed;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.art.Art;
import greyground.art.OutsideTools;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.tone.Srgb;
import java.awt.image.BufferedImage;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/**
 * A picture screened by Ghostscript at 9600 dpi and looked at by a scanner: through a lens, the mean light of the
 * printer's pixels under each of the scan's, ink 0.03 and paper 0.80 of all light, with noise.
 *
 * @param plane the scan
 * @param linesPerCentimetre the ruling that Ghostscript says it made (ActualFrequency of the PostScript Language Reference, 7.4)
 * @param angleDegrees the angle it says it made
 */
record ScannedPrint(GreyPlane plane, double linesPerCentimetre, double angleDegrees) {
    static final double INK = 0.03;
    static final double PAPER = 0.80;
    private static final int PRINTER = 9600;
    private static final int PARTS = 4;
    private static final double NOISE = 0.003;

    /**
     * Prints and scans.
     *
     * @param grey of the picture at a place of it, both 0 to 1 from the top left, 0 black and 1 white
     * @param millimetres side of the square print
     */
    static ScannedPrint of(
            Path folder, DoubleBinaryOperator grey, double millimetres, double lines, double angle, int pixelsPerInch)
            throws Exception {
        int times = PRINTER / pixelsPerInch;
        int scanned = (int) (millimetres / 25.4 * pixelsPerInch);
        int side = scanned * times;
        Path page = folder.resolve("page.ps");
        Path bits = folder.resolve("page.pbm");
        Files.writeString(page, postScript(grey, side, lines, angle), StandardCharsets.US_ASCII);
        String said = OutsideTools.run(
                folder,
                List.of(
                        "gs",
                        "-q",
                        "-dBATCH",
                        "-dNOPAUSE",
                        "-dNOSAFER",
                        "-sDEVICE=pbmraw",
                        "-r" + PRINTER,
                        "-g" + side + "x" + side,
                        "-sOutputFile=" + bits,
                        page.toString()),
                null);
        double[] made = Arrays.stream(said.strip().split("\\s+"))
                .mapToDouble(Double::parseDouble)
                .toArray();
        return new ScannedPrint(scan(Files.readAllBytes(bits), side, scanned), made[0] / 2.54, made[1]);
    }

    private static String postScript(DoubleBinaryOperator grey, int side, double lines, double angle) {
        int samples = 512;
        StringBuilder words = new StringBuilder();
        words.append(String.format(
                Locale.ROOT,
                "<< /HalftoneType 1 /Frequency %.6f /Angle %.6f /AccurateScreens true /ActualFrequency 0 /ActualAngle 0"
                        + " /SpotFunction {180 mul cos exch 180 mul cos add 2 div} >> sethalftone%n"
                        + "currenthalftone dup /ActualFrequency get == /ActualAngle get ==%n"
                        + "%f dup scale %d %d 8 [%d 0 0 %d 0 %d] currentfile /ASCIIHexDecode filter image%n",
                lines * 2.54,
                angle,
                side * 72.0 / PRINTER,
                samples,
                samples,
                samples,
                -samples,
                samples));
        for (int y = 0; y < samples; y++) {
            for (int x = 0; x < samples; x++) {
                words.append(String.format(
                        "%02x", (int) Math.rint(255 * grey.applyAsDouble((x + 0.5) / samples, (y + 0.5) / samples))));
            }
            words.append('\n');
        }
        return words.append(">\nshowpage\n").toString();
    }

    private static GreyPlane scan(byte[] pbm, int side, int scanned) {
        int rowBytes = (side + 7) / 8;
        int head = pbm.length - rowBytes * side;
        String size = new String(pbm, 0, head, StandardCharsets.US_ASCII).strip();
        assertEquals(side + " " + side, size.substring(size.lastIndexOf('\n') + 1));
        int times = side / scanned;
        int part = times / PARTS;
        int fine = scanned * PARTS;
        float[] black = new float[fine * fine];
        IntStream.range(0, fine).parallel().forEach(row -> {
            for (int y = row * part; y < (row + 1) * part; y++) {
                for (int x = 0; x < fine * part; x++) {
                    int bit = pbm[head + y * rowBytes + x / 8] >> (7 - x % 8) & 1;
                    black[row * fine + x / part] += bit / (float) (part * part);
                }
            }
        });
        // The sensor's square of PARTS x PARTS, and a lens of 0.4 pixels and paper's 12 um as one normal curve.
        double lens = Math.hypot(0.4, 12.0 / (25_400.0 / PRINTER * times)) * PARTS;
        double[] seen = sensor(lens);
        float[] across = new float[scanned * fine];
        for (int y = 0; y < fine; y++) {
            for (int x = 0; x < scanned; x++) {
                across[y * scanned + x] = (float) sum(seen, black, y * fine, x * PARTS, 1, fine);
            }
        }
        Random noise = new Random(7);
        short[] codes = new short[scanned * scanned];
        for (int y = 0; y < scanned; y++) {
            for (int x = 0; x < scanned; x++) {
                double light = PAPER
                        + (INK - PAPER) * sum(seen, across, x, y * PARTS, scanned, fine)
                        + NOISE * noise.nextGaussian();
                codes[y * scanned + x] = (short) Math.rint(65_535 * Math.max(0, Math.min(1, light)));
            }
        }
        return new ArrayPlane(scanned, scanned, codes);
    }

    private static double[] sensor(double lens) {
        int reach = (int) Math.ceil(3 * lens);
        double[] seen = new double[PARTS + 2 * reach];
        double all = 0;
        for (int i = 0; i < seen.length; i++) {
            for (int j = 0; j < PARTS; j++) {
                double away = (i - reach - j) / lens;
                seen[i] += Math.exp(-away * away / 2);
            }
            all += seen[i];
        }
        for (int i = 0; i < seen.length; i++) {
            seen[i] /= all;
        }
        return seen;
    }

    /** What falls on the sensor that starts at {@code from}; the last value goes on past either end. */
    private static double sum(double[] seen, float[] values, int start, int from, int step, int count) {
        double sum = 0;
        int reach = (seen.length - PARTS) / 2;
        for (int i = 0; i < seen.length; i++) {
            sum += seen[i] * values[start + step * Math.max(0, Math.min(count - 1, from - reach + i))];
        }
        return sum;
    }

    /** Makes {@code testimages/printed-page.png}, the middle of our still life as a book would print it: {@code testimages/still-life.png OUT.png}. */
    public static void main(String[] arguments) throws Exception {
        Path folder = Files.createTempDirectory("printed");
        try (GreyPlane art = Art.open(Path.of(arguments[0])).decode(Progress.NONE, 1L << 28, folder)) {
            short[] row = new short[art.width()];
            GreyPlane scan = of(
                            folder,
                            (x, y) -> {
                                art.readRow((int) (y * art.height()), row);
                                int at = (int) ((art.width() - art.height()) / 2 + x * art.height());
                                return Math.pow((row[at] & 0xFFFF) / 65_535.0, 0.7);
                            },
                            45,
                            54,
                            45,
                            600)
                    .plane();
            BufferedImage page = new BufferedImage(scan.width(), scan.height(), BufferedImage.TYPE_BYTE_GRAY);
            short[] light = new short[scan.width()];
            for (int y = 0; y < scan.height(); y++) {
                scan.readRow(y, light);
                for (int x = 0; x < light.length; x++) {
                    double coded = Srgb.encode((light[x] & 0xFFFF) / 65_535.0);
                    page.getRaster().setSample(x, y, 0, (int) Math.rint(255 * coded));
                }
            }
            ImageIO.write(page, "png", Path.of(arguments[1]).toFile());
        }
    }
}
