package greyground.simulation;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.app.files.KeptFiles;
import greyground.chart.Area;
import greyground.chart.InkChart;
import greyground.chart.InkPatch;
import greyground.chart.LevelPatch;
import greyground.colour.Lab;
import greyground.colour.Xyz;
import greyground.film.compose.TestPlateSheet;
import greyground.film.sheet.InkChartFile;
import greyground.output.Attachment;
import greyground.output.ExternalTool;
import java.awt.color.ColorSpace;
import java.awt.image.BufferedImage;
import java.awt.image.ColorModel;
import java.awt.image.ComponentColorModel;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;

/**
 * The scan of a colour print of inks' test plates: poppler draws each plate's film, and a shop of {@link ForeignInks} lays its inks over one another
 * on the pixels of a scan.
 *
 * @param chart what lies where
 * @param coverage of each plate at each pixel
 */
public record ComposedPrint(InkChart chart, ForeignInks foreign, List<float[]> coverage, int width, int height) {
    private static final int DOTS_PER_INCH = 300;
    private static final int MARGIN = 130;
    private static final int NODES = 9;
    private static final double WHITE = 0.9;

    /** Draws the films of a set and prints them. */
    public static ComposedPrint of(Path set, long seed) throws Exception {
        InkChart chart = InkChartFile.read(KeptFiles.text("test plate", set, Attachment.CHART));
        int inks = chart.tones().size();
        Path folder = set.toAbsolutePath().getParent();
        String name = set.getFileName().toString();
        String resolution = Integer.toString(DOTS_PER_INCH);
        ExternalTool.run(
                folder, "pdftoppm", "-r", resolution, "-l", Integer.toString(inks), "-png", "-gray", name, name);
        String boxes = ExternalTool.run(folder, "pdfinfo", "-box", "-f", "1", "-l", "1", name);
        double[] media = box(boxes, "MediaBox");
        double[] trim = box(boxes, "TrimBox");
        double pixel = DOTS_PER_INCH / 72.0;
        int left = (int) Math.round((trim[0] - media[0]) * pixel);
        int top = (int) Math.round((media[3] - trim[3]) * pixel);
        int plateWidth = (int) Math.round((trim[2] - trim[0]) * pixel);
        int plateHeight = (int) Math.round((trim[3] - trim[1]) * pixel);
        int width = plateWidth + 2 * MARGIN;
        int height = plateHeight + 2 * MARGIN;
        List<float[]> coverage = new ArrayList<>();
        for (int ink = 0; ink < inks; ink++) {
            String page = pageName(folder, name, ink + 1);
            Raster film = ImageIO.read(folder.resolve(page).toFile()).getRaster();
            float[] black = new float[width * height];
            for (int y = 0; y < plateHeight; y++) {
                for (int x = 0; x < plateWidth; x++) {
                    black[(y + MARGIN) * width + x + MARGIN] = 1 - film.getSample(left + x, top + y, 0) / 255f;
                }
            }
            coverage.add(black);
        }
        return new ComposedPrint(chart, new ForeignInks(inks, seed), coverage, width, height);
    }

    private static String pageName(Path folder, String name, int page) {
        for (String digits : List.of("%d", "%02d", "%03d")) {
            String file = name + "-" + String.format(digits, page) + ".png";
            if (folder.resolve(file).toFile().exists()) {
                return file;
            }
        }
        throw new IllegalStateException("poppler drew no page " + page);
    }

    private static double[] box(String boxes, String name) {
        Matcher found = Pattern.compile(name + ":\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)")
                .matcher(boxes);
        assertTrue(found.find(), boxes);
        double[] box = new double[4];
        for (int i = 0; i < 4; i++) {
            box[i] = Double.parseDouble(found.group(i + 1));
        }
        return box;
    }

    /** Six numbers of a place, the scanner's three and X, Y and Z, at even steps of each plate's coverage. */
    private double[][] table(int plates) {
        int inks = coverage.size();
        int count = (int) Math.pow(NODES, inks);
        double[][] table = new double[count][6];
        for (int i = 0; i < count; i++) {
            double[] shares = new double[inks];
            for (int ink = 0, rest = i; ink < inks; ink++, rest /= NODES) {
                shares[ink] = (plates >> ink & 1) == 0 ? 0 : rest % NODES / (NODES - 1.0);
            }
            double[] spectrum = foreign.print(shares, foreign.even(inks));
            System.arraycopy(foreign.scanned(spectrum, 0), 0, table[i], 0, 3);
            System.arraycopy(foreign.colour(spectrum), 0, table[i], 3, 3);
        }
        return table;
    }

    private void at(double[][] table, int pixel, double[] into) {
        int inks = coverage.size();
        int base = 0;
        double[] above = new double[inks];
        for (int ink = 0, stride = 1; ink < inks; ink++, stride *= NODES) {
            double place = coverage.get(ink)[pixel] * (NODES - 1);
            int below = (int) Math.min(place, NODES - 2.0);
            above[ink] = place - below;
            base += below * stride;
        }
        Arrays.fill(into, 0);
        for (int corner = 0; corner < 1 << inks; corner++) {
            double weight = 1;
            int node = base;
            for (int ink = 0, stride = 1; ink < inks; ink++, stride *= NODES) {
                boolean upper = (corner >> ink & 1) != 0;
                weight *= upper ? above[ink] : 1 - above[ink];
                node += upper ? stride : 0;
            }
            for (int i = 0; i < into.length && weight > 0; i++) {
                into[i] += weight * table[node][i];
            }
        }
    }

    /** The print of some of the plates as the scanner sees it, coded as sRGB in 8 bits. */
    public BufferedImage scan(int plates) {
        return scanned(plates, new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB), 255, false);
    }

    /** The same in 16 bits. */
    public BufferedImage deepScan(int plates) {
        return scanned(plates, picture(ColorSpace.CS_sRGB, DataBuffer.TYPE_USHORT), 65_535, false);
    }

    /** The same in 8 bits of linear light; a TIFF of it carries a profile that says so. */
    public BufferedImage linearScan(int plates) {
        return scanned(plates, picture(ColorSpace.CS_LINEAR_RGB, DataBuffer.TYPE_BYTE), 255, true);
    }

    private BufferedImage picture(int space, int type) {
        ColorModel model =
                new ComponentColorModel(ColorSpace.getInstance(space), false, false, ColorModel.OPAQUE, type);
        WritableRaster raster = Raster.createInterleavedRaster(type, width, height, 3, null);
        return new BufferedImage(model, raster, false, null);
    }

    private BufferedImage scanned(int plates, BufferedImage scan, int most, boolean linear) {
        double[][] table = table(plates);
        double[] here = new double[6];
        Random random = new Random(5);
        for (int pixel = 0; pixel < width * height; pixel++) {
            at(table, pixel, here);
            for (int channel = 0; channel < 3; channel++) {
                double light = Math.max(0, Math.min(1, WHITE * here[channel] + 0.003 * random.nextGaussian()));
                double code =
                        linear ? light : light <= 0.0031308 ? 12.92 * light : 1.055 * Math.pow(light, 1 / 2.4) - 0.055;
                scan.getRaster().setSample(pixel % width, pixel / width, channel, (int) Math.round(most * code));
            }
        }
        return scan;
    }

    public void write(BufferedImage scan, Path file) throws Exception {
        ImageIO.write(scan, "png", file.toFile());
    }

    /** Upside down. */
    public static BufferedImage turned(BufferedImage scan) {
        BufferedImage turned = new BufferedImage(scan.getWidth(), scan.getHeight(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < scan.getHeight(); y++) {
            for (int x = 0; x < scan.getWidth(); x++) {
                turned.setRGB(scan.getWidth() - 1 - x, scan.getHeight() - 1 - y, scan.getRGB(x, y));
            }
        }
        return turned;
    }

    /** Red, green and blue alike. */
    public static BufferedImage withoutColour(BufferedImage scan) {
        BufferedImage grey = new BufferedImage(scan.getWidth(), scan.getHeight(), BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < scan.getHeight(); y++) {
            for (int x = 0; x < scan.getWidth(); x++) {
                grey.setRGB(x, y, (scan.getRGB(x, y) >> 8 & 0xFF) * 0x010101);
            }
        }
        return grey;
    }

    /** What a spectrophotometer says of the middle of a field. */
    private Lab measured(double[][] table, Area area) {
        double perMillimetre = DOTS_PER_INCH / 25.4;
        int fromX = MARGIN + (int) ((area.middleX() / 1000 - 2.5) * perMillimetre);
        int fromY = MARGIN + (int) ((area.middleY() / 1000 - 2.5) * perMillimetre);
        int side = (int) (5 * perMillimetre);
        double[] sums = new double[3];
        double[] here = new double[6];
        for (int i = 0; i < side * side; i++) {
            at(table, (fromY + i / side) * width + fromX + i % side, here);
            for (int row = 0; row < 3; row++) {
                sums[row] += here[3 + row] / (side * side);
            }
        }
        return Lab.of(new Xyz(sums[0], sums[1], sums[2]));
    }

    /** Colour of a full tone as it printed. */
    public Lab full(int plates) {
        double[][] table = table((1 << coverage.size()) - 1);
        double lightness = 0;
        double a = 0;
        double b = 0;
        int count = 0;
        for (InkPatch patch : chart.patches()) {
            if (patch.role().equals(new InkPatch.Full(plates))) {
                Lab lab = measured(table, patch.area());
                lightness += lab.lightness();
                a += lab.a();
                b += lab.b();
                count++;
            }
        }
        return new Lab(lightness / count, a / count, b / count);
    }

    /** Some fields as a spectrophotometer reads them, one of each full tone first, and the bare sheet. */
    public String measured(int count) {
        double[][] table = table((1 << coverage.size()) - 1);
        StringBuilder lines = new StringBuilder("row,column,L*,a*,b*\n");
        Lab sheet = Lab.of(xyz(foreign.colour(foreign.sheet())));
        lines.append(line(0, 0, sheet));
        List<InkPatch.Role> had = new ArrayList<>();
        for (int pass = 0; pass < 2; pass++) {
            for (InkPatch patch : chart.patches()) {
                InkPatch.Role role = patch.role();
                boolean due = pass == 1 || role instanceof InkPatch.Full;
                if (due && !role.isCheck() && had.size() < count && !had.contains(role)) {
                    had.add(role);
                    int[] place = place(patch);
                    lines.append(line(place[0], place[1], measured(table, patch.area())));
                }
            }
        }
        return lines.toString();
    }

    private static Xyz xyz(double[] values) {
        return new Xyz(values[0], values[1], values[2]);
    }

    private static String line(int row, int column, Lab lab) {
        return String.format(Locale.ROOT, "%d,%d,%.2f,%.2f,%.2f%n", row, column, lab.lightness(), lab.a(), lab.b());
    }

    private int[] place(InkPatch patch) {
        List<List<LevelPatch>> rows = TestPlateSheet.fields(chart.print());
        for (int row = 0; row < rows.size(); row++) {
            for (int column = 0; column < rows.get(row).size(); column++) {
                if (rows.get(row).get(column).area().equals(patch.area())) {
                    return new int[] {row + 1, column + 1};
                }
            }
        }
        throw new IllegalStateException("every field has a place");
    }
}
