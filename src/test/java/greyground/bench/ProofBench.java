package greyground.bench;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Whole prints as whole processes, beside the film that they are of: wall time, the ratio to the warm main job of the 210 x 148 mm film, and
 * peak resident memory.
 *
 * <pre>
 * java -cp TEST-CLASS-PATH greyground.bench.ProofBench ART FOLDER
 * </pre>
 *
 * <p>The folder holds films, pictures and a cache of its own. Needs GNU time for the memory.
 */
public final class ProofBench {
    private final Path folder;
    private double film = Double.NaN;

    private ProofBench(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] arguments) throws Exception {
        ProofBench bench = new ProofBench(Path.of(arguments[1]));
        System.out.printf(
                Locale.ROOT,
                "%s, %d cores of %s, Java %s%n",
                LocalDate.now(),
                Runtime.getRuntime().availableProcessors(),
                System.getProperty("os.arch"),
                System.getProperty("java.version"));
        String small = bench.film(arguments[0], "210x148mm");
        bench.film(arguments[0], "210x148mm");
        String print = bench.file("print.png");
        bench.time("print, no sample kept", "proof", small, "--out", print);
        bench.time("print", "proof", small, "--out", print);
        bench.time(
                "print, copper and resist",
                "proof",
                small,
                "--out",
                print,
                "--copper",
                bench.file("copper.png"),
                "--resist",
                bench.file("resist.png"));
        bench.time("print of 300 x 400 mm", "proof", bench.film(arguments[0], "300x400mm"), "--out", print);
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    /** Makes a film, and forgets what neighbourhoods of its grain print. */
    private String film(String art, String plate) throws Exception {
        String pdf = file(plate + ".pdf");
        double made = time(
                "film of " + plate,
                "positive",
                art,
                "--plate",
                plate,
                "--resolution",
                "1440",
                "--date",
                "2026-01-01",
                "--out",
                pdf);
        Path cache = Files.createDirectories(folder.resolve("greyground"));
        if (plate.startsWith("210")) {
            film = made;
            try (DirectoryStream<Path> kept = Files.newDirectoryStream(cache, "*.neighbourhoods")) {
                for (Path file : kept) {
                    Files.delete(file);
                }
            }
        }
        return pdf;
    }

    private double time(String what, String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("env", "XDG_CACHE_HOME=" + folder.toAbsolutePath(), "java"));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "greyground.Main"));
        command.addAll(List.of(words));
        double[] figures = WholeFilmBench.run(command);
        System.out.printf(
                Locale.ROOT,
                "%-28s %6.1f s, %5.2f films, %5.0f MiB%n",
                what,
                figures[0],
                figures[0] / film,
                figures[1]);
        return figures[0];
    }
}
