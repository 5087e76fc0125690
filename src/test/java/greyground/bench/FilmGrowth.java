package greyground.bench;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/**
 * Films of one art from small to huge, each by a process of its own: time and memory against the pixels of the sheet.
 *
 * <pre>
 * java -cp target/test-classes greyground.bench.FilmGrowth ART.tif MAXIMUM-HEAP
 * </pre>
 *
 * <p>The art should be three to four, as the plates are. Needs GNU time for the memory.
 */
public final class FilmGrowth {
    /** Long sides of plates in millimetres; the short ones are three quarters of them. */
    private static final int[] SIDES = {64, 128, 200, 400, 640, 900, 1280};

    private static final int RESOLUTION = 1440;

    private FilmGrowth() {}

    public static void main(String[] arguments) throws Exception {
        Path film = Files.createTempFile("film", ".pdf");
        System.out.printf("plate (mm), megapixels of picture, seconds, ns a pixel, MiB of %s allowed%n", arguments[1]);
        for (int side : SIDES) {
            int across = side * 3 / 4;
            double pixels = across * (double) side * RESOLUTION / 25.4 * RESOLUTION / 25.4;
            double[] least = {Double.MAX_VALUE, 0};
            for (int time = 0; time < 3; time++) {
                double[] run = WholeFilmBench.run(List.of(
                        "java",
                        "-Xmx" + arguments[1],
                        "-jar",
                        "target/greyground.jar",
                        "positive",
                        arguments[0],
                        "--plate",
                        across + "x" + side + "mm",
                        "--bleed",
                        "0mm",
                        "--resolution",
                        String.valueOf(RESOLUTION),
                        "--out",
                        film.toString()));
                least = new double[] {Math.min(least[0], run[0]), Math.max(least[1], run[1])};
            }
            System.out.printf(
                    Locale.ROOT,
                    "| %d x %d | %.0f | %.2f | %.2f | %.0f |%n",
                    across,
                    side,
                    pixels / 1e6,
                    least[0],
                    least[0] / pixels * 1e9,
                    least[1]);
        }
        Files.delete(film);
    }
}
