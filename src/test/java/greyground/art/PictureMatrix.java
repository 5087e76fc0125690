package greyground.art;

import static java.nio.charset.StandardCharsets.UTF_8;

import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.IntStream;

/**
 * Cells of kind and feature: picture files written by independent programs, and what another of them decodes from each. The
 * cells are lines of {@code matrix.txt}, carried out by {@code matrix.py} beside it.
 */
final class PictureMatrix {
    /** Programs of which every one must be there. */
    private static final List<String> PROGRAMS = List.of(
            "convert", "tiffcp", "tiff2rgba", "fax2tiff", "vips", "cwebp", "dwebp", "img2webp", "pnmtopng", "pamtotga");

    private static final String BEGIN = "<!-- the table is written by art.PictureMatrix -->";
    private static final String END = "<!-- end of the table -->";

    private PictureMatrix() {}

    /**
     * One line of the table, carried out.
     *
     * @param line its number in the table
     * @param strayed how far the decoded file lies from the picture it was made of, on average; 0 where that says nothing
     */
    record Cell(
            int line,
            String kind,
            String feature,
            String source,
            String written,
            String read,
            Path file,
            int width,
            int height,
            double strayed) {
        /** The words that a refusal must hold, or null for a cell that must open. */
        String refusal() {
            return read.startsWith("refused")
                    ? read.substring("refused".length()).strip()
                    : null;
        }

        /** Whether the file holds sixteen bits of each sample, and so does what is compared with it. */
        boolean exact() {
            return source.endsWith("16");
        }

        /** Distances of the plane from the independent decode, from the least. */
        double[] distances() throws IOException {
            ByteBuffer light = ByteBuffer.wrap(
                    Files.readAllBytes(file.resolveSibling(String.format(Locale.ROOT, "%03d.light", line))));
            try (GreyPlane plane = Art.open(file).decode(Progress.NONE, 256L << 20, file.getParent())) {
                if (plane.width() != width || plane.height() != height) {
                    throw new AssertionError("it is " + plane.width() + " x " + plane.height() + " pixels, not " + width
                            + " x " + height);
                }
                int[] codes = Picture.samples(plane);
                double[] distances = new double[codes.length];
                for (int i = 0; i < codes.length; i++) {
                    distances[i] = Math.abs(codes[i] / 65_535.0 - light.getFloat());
                }
                Arrays.sort(distances);
                return distances;
            }
        }

        @Override
        public String toString() {
            return kind + ", " + feature;
        }
    }

    static double mean(double[] distances) {
        return Arrays.stream(distances).average().orElseThrow();
    }

    static double hundredth(double[] sorted) {
        return sorted[sorted.length * 99 / 100];
    }

    /** Numbers of the table's lines that are cells. */
    static List<Integer> lines() throws Exception {
        List<String> table = Files.readAllLines(resource("matrix.txt"), UTF_8);
        return IntStream.rangeClosed(1, table.size())
                .filter(n ->
                        table.get(n - 1).contains(" | ") && !table.get(n - 1).startsWith("#"))
                .boxed()
                .toList();
    }

    /** Carries out some of the table's lines in {@code folder}; skips or, where CI is true, fails if a program is missing. */
    static List<Cell> in(Path folder, List<Integer> lines) throws Exception {
        for (String program : PROGRAMS) {
            OutsideTools.need(program);
        }
        String python = OutsideTools.python("import numpy, PIL");
        List<String> words = new ArrayList<>(List.of(
                python, resource("matrix.py").toString(), resource("matrix.txt").toString(), folder.toString()));
        lines.forEach(line -> words.add(line.toString()));
        return cells(folder, OutsideTools.run(folder, words, null));
    }

    static List<Cell> cells(Path folder, String answers) throws Exception {
        List<String> table = Files.readAllLines(resource("matrix.txt"), UTF_8);
        List<Cell> cells = new ArrayList<>();
        for (String answer : answers.lines().toList()) {
            String[] words = answer.split(" ");
            if (words.length != 5) {
                throw new AssertionError(answer);
            }
            int line = Integer.parseInt(words[0]);
            String[] columns = table.get(line - 1).split(" \\| ");
            cells.add(new Cell(
                    line,
                    columns[0],
                    columns[1],
                    columns[2],
                    columns[3],
                    columns[4],
                    folder.resolve(words[1]),
                    Integer.parseInt(words[2]),
                    Integer.parseInt(words[3]),
                    Double.parseDouble(words[4])));
        }
        return cells;
    }

    private static Path resource(String name) throws URISyntaxException {
        return Path.of(
                Objects.requireNonNull(PictureMatrix.class.getResource(name)).toURI());
    }

    /** Writes the table with what was measured into the page that the first argument names. */
    public static void main(String[] arguments) throws Exception {
        Path page = Path.of(arguments[0]);
        Path folder = Files.createTempDirectory("matrix");
        StringBuilder table = new StringBuilder(BEGIN)
                .append(
                        "\n\n| kind | feature | written by | decoded by | mean | 99 in 100 |\n|---|---|---|---|---|---|\n");
        for (Cell cell : in(folder, lines())) {
            table.append("| ")
                    .append(cell.kind())
                    .append(" | ")
                    .append(cell.feature())
                    .append(" | ");
            table.append(program(cell.written())).append(" | ");
            if (cell.refusal() != null) {
                table.append("| refused | |\n");
                continue;
            }
            double[] distances = cell.distances();
            table.append(String.format(
                    Locale.ROOT, "%s | %.5f | %.4f |\n", program(cell.read()), mean(distances), hundredth(distances)));
        }
        String old = Files.readString(page, UTF_8);
        Files.writeString(
                page, old.substring(0, old.indexOf(BEGIN)) + table + "\n" + old.substring(old.indexOf(END)), UTF_8);
    }

    /** Whose program a command or an expression runs last. */
    private static String program(String words) {
        String[][] programs = {
            {"(tiffcp|fax2tiff|rgba\\().*", "libtiff"},
            {"(cwebp|img2webp|.*dwebp).*", "libwebp"},
            {".*(vips|profiled\\().*", "libvips"},
            {".*(convert|im\\().*", "ImageMagick"},
            {".*(pnm|pam|ppm|pbm|net\\().*", "netpbm"},
            {".*(\\.save\\(|pil\\(|old_jpeg|arithmetic).*", "Pillow"},
        };
        String last = words.substring(words.lastIndexOf("&&") + 2 > 1 ? words.lastIndexOf("&&") + 2 : 0)
                .strip();
        for (String[] program : programs) {
            if (last.matches(program[0])) {
                return program[1];
            }
        }
        return "the test";
    }
}
