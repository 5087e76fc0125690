package greyground.bench;

import greyground.grain.Grain;
import greyground.grain.GrainQuality;
import greyground.grain.HalftoneScreen;
import greyground.grain.ThresholdTile;
import greyground.quantity.Resolution;
import greyground.quantity.Ruling;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.IntBinaryOperator;
import javax.imageio.ImageIO;

/**
 * Draws the pictures of {@code docs/grain.md} and prints its tables. Run from the project's folder, after
 * {@code mvn test-compile}, with the test classes on the class path; pictures go to {@code docs/pictures}.
 */
final class GrainPictures {
    private static final Resolution FILM = new Resolution(1440);
    private static final double SPACING = 180;
    private static final long[] SEEDS = {1, 7, 2026};
    private static final Path FOLDER = Path.of("docs", "pictures");

    private GrainPictures() {}

    public static void main(String[] arguments) throws IOException {
        Files.createDirectories(FOLDER);
        long start = System.nanoTime();
        ThresholdTile tile = ThresholdTile.of(new Grain.Stochastic(SPACING, 1), FILM);
        System.out.printf(Locale.ROOT, "first tile in this machine: %d ms%n", (System.nanoTime() - start) / 1_000_000);
        start = System.nanoTime();
        ThresholdTile.of(new Grain.Stochastic(SPACING, 2), FILM);
        System.out.printf(Locale.ROOT, "second: %d ms%n", (System.nanoTime() - start) / 1_000_000);
        pictures(tile);
        table();
    }

    private static void pictures(ThresholdTile tile) throws IOException {
        double[] tones = {0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 0.95};
        bits("grain-tones", 7 * 150, 150, 1, (x, y) -> black(tile, x, y, tones[x / 150]));
        bits("grain-gradient", 1000, 160, 1, (x, y) -> black(tile, x, y, x / 1000.0));
        bits("grain-close", 400, 130, 3, (x, y) -> black(tile, x, y, (x + 0.5) / 400));
        // Three by three tiles, averaged over 4 x 4 pixels, to look for repeats.
        int side = 3 * tile.width() / 4;
        BufferedImage repeats = new BufferedImage(side, side, BufferedImage.TYPE_BYTE_GRAY);
        for (int y = 0; y < side; y++) {
            for (int x = 0; x < side; x++) {
                int sum = 0;
                for (int k = 0; k < 16; k++) {
                    sum += black(tile, 4 * x + k % 4, 4 * y + k / 4, 0.3) != 0 ? 0 : 1;
                }
                repeats.getRaster().setSample(x, y, 0, sum * 255 / 16);
            }
        }
        ImageIO.write(repeats, "png", FOLDER.resolve("grain-repeats.png").toFile());
        HalftoneScreen round = HalftoneScreen.of(new Grain.Halftone(new Ruling(48), 45, Grain.DotShape.ROUND), FILM);
        bits("grain-halftone-round", 400, 130, 3, (x, y) -> black(round.tile(), x, y, (x + 0.5) / 400));
        HalftoneScreen line = HalftoneScreen.of(new Grain.Halftone(new Ruling(40), 30, Grain.DotShape.LINE), FILM);
        bits("grain-halftone-line", 400, 130, 3, (x, y) -> black(line.tile(), x, y, (x + 0.5) / 400));
        spectra(tile);
    }

    private static int black(ThresholdTile tile, int x, int y, double coverage) {
        return Math.round(coverage * 65_535) > tile.threshold(x, y) ? 1 : 0;
    }

    private static void bits(String name, int width, int height, int scale, IntBinaryOperator black)
            throws IOException {
        BufferedImage image = new BufferedImage(width * scale, height * scale, BufferedImage.TYPE_BYTE_BINARY);
        for (int y = 0; y < height * scale; y++) {
            for (int x = 0; x < width * scale; x++) {
                image.getRaster().setSample(x, y, 0, 1 - black.applyAsInt(x / scale, y / scale));
            }
        }
        ImageIO.write(image, "png", FOLDER.resolve(name + ".png").toFile());
    }

    /** Power against frequency, both axes linear; frequency 0 to 12 cycles/mm, power 0 to 4 of white noise. */
    private static void spectra(ThresholdTile tile) throws IOException {
        int width = 720;
        int height = 400;
        int margin = 40;
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setColor(Color.WHITE);
        pen.fillRect(0, 0, width, height);
        pen.setColor(Color.LIGHT_GRAY);
        for (int tick = 0; tick <= 12; tick++) {
            int x = margin + tick * (width - 2 * margin) / 12;
            pen.drawLine(x, margin, x, height - margin);
            pen.drawString(Integer.toString(tick), x - 3, height - margin + 16);
        }
        pen.setColor(Color.BLACK);
        pen.drawString("cycles/mm", width - margin - 60, height - 6);
        pen.drawString("power over that of white noise, log scale 0.01 to 1000", margin, margin - 12);
        double tileMillimetres = FILM.millimetres(tile.width());
        int reach = (int) (12 * tileMillimetres);
        double[] tones = {0.05, 0.15, 0.3, 0.5};
        for (int tone = 0; tone < tones.length; tone++) {
            double[] mean = GrainQuality.spectrum(GrainQuality.bits(tile, tones[tone]), tile.width(), reach, 1)
                    .mean();
            pen.setColor(new Color(40 * tone, 40 * tone, 40 * tone));
            pen.setStroke(new BasicStroke(1 + 0.6f * tone));
            int lastX = 0;
            int lastY = 0;
            for (int r = 1; r <= reach; r++) {
                int x = margin + (int) (r / tileMillimetres / 12 * (width - 2 * margin));
                double log = Math.max(0, Math.min(5, Math.log10(mean[r]) + 2)) / 5;
                int y = height - margin - (int) (log * (height - 2 * margin));
                if (r > 1) {
                    pen.drawLine(lastX, lastY, x, y);
                }
                lastX = x;
                lastY = y;
            }
            pen.drawLine(width - 170, margin + 16 + 16 * tone, width - 140, margin + 16 + 16 * tone);
            pen.drawString("coverage " + tones[tone], width - 134, margin + 20 + 16 * tone);
        }
        pen.dispose();
        ImageIO.write(image, "png", FOLDER.resolve("grain-spectra.png").toFile());
    }

    /** Worst of three seeds at each tone. */
    private static void table() {
        double spacing = SPACING / FILM.pitchMicrometres();
        double wide = 40 / FILM.pitchMicrometres();
        System.out.println("| coverage | dots kept | lands kept | noise | noise per cluster pixel | anisotropy |");
        System.out.println("|---|---|---|---|---|---|");
        for (double tone : new double[] {
            0.03, 0.05, 0.08, 0.10, 0.12, 0.15, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.85, 0.88, 0.90, 0.92, 0.95,
            0.97
        }) {
            double dots = 1;
            double lands = 1;
            double noise = 0;
            double scaled = 0;
            double anisotropy = 0;
            for (long seed : SEEDS) {
                ThresholdTile tile = ThresholdTile.of(new Grain.Stochastic(SPACING, seed), FILM);
                int side = tile.width();
                boolean[] bits = GrainQuality.bits(tile, tone);
                boolean[] other = GrainQuality.inverse(bits);
                double share = Math.min(tone, 1 - tone);
                double count = share < 0.115
                        ? GrainQuality.clusters(tone < 0.5 ? bits : other, side).length
                        : Math.pow(side / spacing, 2);
                double principal = Math.sqrt(count);
                GrainQuality.Spectrum spectrum =
                        GrainQuality.spectrum(bits, side, (int) (1.25 * principal), 0.75 * principal);
                double low = spectrum.lowBand(0.5 * principal);
                noise = Math.max(noise, low);
                scaled = Math.max(scaled, low * count / (share * side * side));
                anisotropy = Math.max(anisotropy, spectrum.anisotropy(0.8 * principal, 1.2 * principal));
                dots = Math.min(dots, GrainQuality.survival(bits, side, wide, 4, 400));
                lands = Math.min(lands, GrainQuality.survival(other, side, wide, 4, 400));
            }
            System.out.printf(
                    Locale.ROOT,
                    "| %.2f | %.3f | %.3f | %.3f | %.4f | %.2f |%n",
                    tone,
                    dots,
                    lands,
                    noise,
                    scaled,
                    anisotropy);
        }
    }
}
