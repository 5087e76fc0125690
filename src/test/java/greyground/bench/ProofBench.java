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
 * First films, mended films and whole prints as whole processes, beside the warm main job of the 210 x 148 mm film: wall time, processor time,
 * which a busy machine leaves alone, the ratios of both to that job, and peak resident memory.
 *
 * <pre>
 * java -cp TEST-CLASS-PATH greyground.bench.ProofBench ART FOLDER
 * </pre>
 *
 * <p>The folder holds films, pictures and a cache of its own. Needs GNU time for the memory.
 */
public final class ProofBench {
    private final Path folder;
    private double[] film = {Double.NaN, 0, Double.NaN};

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
        bench.forget("");
        String small = bench.film(arguments[0], "210x148mm");
        for (int i = 0; i < 3; i++) {
            bench.film(arguments[0], "210x148mm");
        }
        bench.forget("");
        bench.time("first film of a workshop", bench.words(arguments[0], "210x148mm"));
        List<String> mended = new ArrayList<>(List.of(bench.words(arguments[0], "210x148mm")));
        mended.add("--mend");
        bench.time("the same, mended", mended.toArray(String[]::new));
        small = bench.film(arguments[0], "210x148mm");
        bench.forget(".neighbourhoods");
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
        String[] sheet = {"proof", small, "--bite", "10,15,20,25min", "--bite-out", bench.file("bites.png")};
        bench.time("four bites, nothing kept", sheet);
        bench.time("four bites", sheet);
        bench.time("print of 300 x 400 mm", "proof", bench.film(arguments[0], "300x400mm"), "--out", print);
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    private String[] words(String art, String plate) {
        return new String[] {
            "positive",
            art,
            "--plate",
            plate,
            "--resolution",
            "1440",
            "--date",
            "2026-01-01",
            "--out",
            file(plate + ".pdf")
        };
    }

    /** Makes a film; the last small one is what the others are held against. */
    private String film(String art, String plate) throws Exception {
        double[] made = time("film of " + plate, words(art, plate));
        if (plate.startsWith("210")) {
            film = made;
        }
        return file(plate + ".pdf");
    }

    /** Forgets what is kept under names that end so. */
    private void forget(String ending) throws IOException {
        Path cache = Files.createDirectories(folder.resolve("greyground"));
        try (DirectoryStream<Path> kept = Files.newDirectoryStream(cache, "*" + ending)) {
            for (Path file : kept) {
                Files.delete(file);
            }
        }
    }

    private double[] time(String what, String... words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(List.of("env", "XDG_CACHE_HOME=" + folder.toAbsolutePath(), "java"));
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), "greyground.Main"));
        command.addAll(List.of(words));
        double[] figures = WholeFilmBench.run(command);
        System.out.printf(
                Locale.ROOT,
                "%-28s %6.1f s, %5.2f films; processor %6.1f s, %5.2f films; %5.0f MiB%n",
                what,
                figures[0],
                figures[0] / film[0],
                figures[2],
                figures[2] / film[2],
                figures[1]);
        return figures;
    }
}
