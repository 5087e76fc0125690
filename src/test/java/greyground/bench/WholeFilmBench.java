package greyground.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Whole processes in turn: a yardstick program against {@code greyground positive} on the same art, wall time and peak resident
 * memory of each, and the median ratio.
 *
 * <pre>
 * java -cp target/test-classes greyground.bench.WholeFilmBench ROUNDS ART.tif "YARDSTICK COMMAND" ["JAVA OPTIONS"]
 * </pre>
 *
 * <p>The yardstick used for the figures in docs/architecture.md makes the same 17 008 x 22 677 pixels with libvips 8.14: grey
 * from a 6000 x 8000 16-bit RGB TIFF, enlargement, tone table, threshold against a tile, 1-bit TIFF. Ours does all that and the
 * margins, marks, plan and PDF besides. Needs GNU time for the memory.
 */
public final class WholeFilmBench {
    private WholeFilmBench() {}

    public static void main(String[] arguments) throws Exception {
        int rounds = Integer.parseInt(arguments[0]);
        Path film = Files.createTempFile("film", ".pdf");
        List<String> ours = new ArrayList<>(List.of("java"));
        if (arguments.length > 3) {
            ours.addAll(Arrays.asList(arguments[3].split(" ")));
        }
        ours.addAll(List.of("-jar", "target/greyground.jar", "positive", arguments[1]));
        ours.addAll(List.of("--plate", "300x400mm", "--bleed", "0mm", "--resolution", "1440", "--date", "2026-01-01"));
        ours.addAll(List.of("--out", film.toString()));
        List<String> theirs = Arrays.asList(arguments[2].split(" "));
        double[] ratios = new double[rounds];
        for (int i = 0; i < rounds; i++) {
            double[] yardstick = run(theirs);
            double[] mine = run(ours);
            ratios[i] = mine[0] / yardstick[0];
            System.out.printf(
                    Locale.ROOT,
                    "round %d: yardstick %.2f s, %.0f MiB; greyground %.2f s, %.0f MiB; ratio %.3f%n",
                    i + 1,
                    yardstick[0],
                    yardstick[1],
                    mine[0],
                    mine[1],
                    ratios[i]);
        }
        Arrays.sort(ratios);
        System.out.printf(Locale.ROOT, "median ratio %.3f%n", ratios[rounds / 2]);
        Files.delete(film);
    }

    /** Seconds, peak mebibytes and processor seconds of one process. */
    static double[] run(List<String> command) throws IOException, InterruptedException {
        List<String> timed = new ArrayList<>(List.of("/usr/bin/time", "-f", "%e %M %U %S"));
        timed.addAll(command);
        Process process = new ProcessBuilder(timed)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
        String said =
                new String(process.getErrorStream().readAllBytes(), java.nio.charset.StandardCharsets.UTF_8).strip();
        if (process.waitFor() != 0) {
            throw new IOException(command + " failed: " + said);
        }
        String[] figures = said.substring(said.lastIndexOf('\n') + 1).split(" ");
        return new double[] {
            Double.parseDouble(figures[0]),
            Double.parseDouble(figures[1]) / 1024,
            Double.parseDouble(figures[2]) + Double.parseDouble(figures[3])
        };
    }
}
