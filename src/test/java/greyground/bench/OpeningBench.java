package greyground.bench;

import greyground.desk.window.OpenedWindow;
import java.awt.image.BufferedImage;
import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.imageio.ImageIO;

/**
 * Times what a person waits for before anything is seen: pictures opened in a window that runs, each three times, and the start of the window beside
 * {@code --help}. Needs a screen, if only a virtual one. Arguments: {@code all FOLDER} makes the pictures in the folder and measures everything, each in a
 * process of its own; {@code open FILE...} opens files in one window.
 */
public final class OpeningBench {
    private static final Path BEFORE = Path.of("testimages/leaf-alpha.png");
    private static final int ROUNDS = 3;
    private static final int STARTS = 5;

    private OpeningBench() {}

    /** Prints one line for each wait. */
    public static void main(String[] arguments) throws Exception {
        if (arguments[0].equals("open")) {
            open(List.of(arguments).subList(1, arguments.length));
            System.out.println(PeakMemory.words());
            Runtime.getRuntime().halt(0);
        }
        Path folder = Files.createDirectories(Path.of(arguments[1]));
        Path photograph = folder.resolve("24-megapixels.jpg");
        Path scan = folder.resolve("200-megapixels.tif");
        Path large = folder.resolve("300-megapixels.tif");
        photograph(photograph, 6000, 4000);
        scan(scan, 16_000, 12_500);
        scan(large, 20_000, 15_000);
        child("-Xmx2g", photograph.toString(), scan.toString()).forEach(System.out::println);
        System.out.println("within a heap of 1.5 GiB:");
        child("-Xmx1536m", large.toString()).forEach(System.out::println);
        double help = median(() -> start("--help"));
        double window = median(() -> start("desk"));
        System.out.printf(
                Locale.ROOT, "--help %.2f s, window shown %.2f s: %.1f times as long%n", help, window, window / help);
    }

    private static void open(List<String> files) throws Exception {
        OpenedWindow window = new OpenedWindow(Files.createTempDirectory("desk"));
        for (String file : files) {
            for (int round = 0; round < ROUNDS; round++) {
                // Another picture lies there before, as at a window that is at work.
                window.open(BEFORE);
                double[] seconds = window.open(Path.of(file));
                System.out.printf(
                        Locale.ROOT,
                        "%-24s first sight %5.2f s, plate computed %6.2f s%n",
                        Path.of(file).getFileName(),
                        seconds[0],
                        seconds[1]);
            }
        }
    }

    private static List<String> command(String... rest) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Dprism.order=sw",
                "-cp",
                System.getProperty("java.class.path")));
        command.addAll(1, List.of(rest).subList(0, 1));
        command.addAll(List.of(rest).subList(1, rest.length));
        return command;
    }

    private static List<String> child(String heap, String... files) throws Exception {
        List<String> words = new ArrayList<>(List.of(heap, OpeningBench.class.getName(), "open"));
        words.addAll(List.of(files));
        Process process = new ProcessBuilder(command(words.toArray(String[]::new)))
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return said.lines()
                .filter(line -> !line.contains("javafx") && !line.contains("WARNING"))
                .toList();
    }

    private interface Start {
        double seconds() throws Exception;
    }

    private static double median(Start start) throws Exception {
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < STARTS; i++) {
            times.add(start.seconds());
        }
        return times.stream().sorted().toList().get(STARTS / 2);
    }

    /** Seconds from the start of a process until it has ended, or its window is shown. */
    private static double start(String word) throws Exception {
        boolean window = word.equals("desk");
        List<String> command = window
                ? command("-Xmx2g", "greyground.desk.window.DeskShown")
                : command("-Xmx2g", "greyground.Main", word);
        long began = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        process.waitFor();
        return (System.nanoTime() - began) / 1e9;
    }

    // ------------------------------------------------------------------ pictures

    private static void photograph(Path file, int width, int height) throws IOException {
        if (Files.exists(file)) {
            return;
        }
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        Random noise = new Random(1);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int light = light(x, y, width, height, noise);
                image.setRGB(x, y, light << 16 | (light * 7 / 8) << 8 | light * 3 / 4);
            }
        }
        ImageIO.write(image, "jpg", file.toFile());
    }

    private static int light(int x, int y, int width, int height, Random noise) {
        int slope = 180 * x / width + 40 * y / height;
        int ring = (x - width / 2) / 40 * ((y - height / 2) / 40) % 23;
        return Math.max(0, Math.min(255, slope + ring + noise.nextInt(9)));
    }

    /** A grey TIFF of 8 bits, not packed, 64 rows to the strip (TIFF 6.0). */
    private static void scan(Path file, int width, int height) throws IOException {
        if (Files.exists(file)) {
            return;
        }
        int rows = 64;
        int strips = (height + rows - 1) / rows;
        int tags = 9;
        int offsets = 8 + 2 + tags * 12 + 4;
        int counts = offsets + 4 * strips;
        int pixels = counts + 4 * strips;
        Random noise = new Random(2);
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file), 1 << 20))) {
            out.writeInt(0x4D4D002A);
            out.writeInt(8);
            out.writeShort(tags);
            int[][] entries = {
                {256, 4, 1, width},
                {257, 4, 1, height},
                {258, 3, 1, 8 << 16},
                {259, 3, 1, 1 << 16},
                {262, 3, 1, 1 << 16},
                {273, 4, strips, offsets},
                {277, 3, 1, 1 << 16},
                {278, 4, 1, rows},
                {279, 4, strips, counts}
            };
            for (int[] entry : entries) {
                out.writeShort(entry[0]);
                out.writeShort(entry[1]);
                out.writeInt(entry[2]);
                out.writeInt(entry[3]);
            }
            out.writeInt(0);
            for (int strip = 0; strip < strips; strip++) {
                out.writeInt(pixels + strip * rows * width);
            }
            for (int strip = 0; strip < strips; strip++) {
                out.writeInt(Math.min(rows, height - strip * rows) * width);
            }
            byte[] row = new byte[width];
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    row[x] = (byte) light(x, y, width, height, noise);
                }
                out.write(row);
            }
        }
    }
}
