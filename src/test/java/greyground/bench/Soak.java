package greyground.bench;

import greyground.cli.CommandLine;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * Job after job in one process, as a studio's day would be: arguments FOLDER JOBS. A job makes a small film of one of the sound pictures, looks
 * at its plan, and is given a damaged picture too. Prints heap after collection, open files and threads after a tenth of the jobs, and at the end.
 */
public final class Soak {
    private static final Path PICTURES = Path.of("src/test/resources/greyground/fuzz/art/seeds");
    private static final Path OPEN_FILES = Path.of("/proc/self/fd");
    private static final int COLLECTIONS = 3;

    private Soak() {}

    /** What a process holds. */
    private record Held(long heapKibibytes, long files, int threads) {
        static Held now() throws Exception {
            for (int i = 0; i < COLLECTIONS; i++) {
                System.gc();
                // Cleaners close what is no longer referred to on a thread of their own.
                Thread.sleep(200);
            }
            Runtime runtime = Runtime.getRuntime();
            return new Held(
                    (runtime.totalMemory() - runtime.freeMemory()) >> 10,
                    open(),
                    ManagementFactory.getThreadMXBean().getThreadCount());
        }

        private static long open() throws IOException {
            if (!Files.isDirectory(OPEN_FILES)) {
                return 0;
            }
            try (Stream<Path> files = Files.list(OPEN_FILES)) {
                return files.count();
            }
        }
    }

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        int jobs = Integer.parseInt(arguments[1]);
        List<Path> pictures;
        try (Stream<Path> files = Files.list(PICTURES)) {
            pictures = files.sorted().toList();
        }
        Path broken = folder.resolve("broken.png");
        Files.write(broken, java.util.Arrays.copyOf(Files.readAllBytes(PICTURES.resolve("rgb16.png")), 1000));
        long start = System.nanoTime();
        Held early = null;
        for (int job = 0; job < jobs; job++) {
            Path film = folder.resolve("film-" + job % 7 + ".pdf");
            expect(0, film(pictures.get(job % pictures.size()), film));
            expect(0, "plan", film.toString());
            expect(1, film(broken, folder.resolve("none.pdf")));
            if (job == jobs / 10) {
                early = Held.now();
            }
        }
        double seconds = (System.nanoTime() - start) / 1e9;
        Held late = Held.now();
        System.out.println(String.format(
                Locale.ROOT,
                "jobs %d seconds %.0f heap KiB %d then %d files %d then %d threads %d then %d",
                jobs,
                seconds,
                early.heapKibibytes(),
                late.heapKibibytes(),
                early.files(),
                late.files(),
                early.threads(),
                late.threads()));
        System.exit(0);
    }

    private static String[] film(Path art, Path film) {
        return ("positive " + art + " --plate 30x30mm --resolution 300 --ruling 15/cm --white 100% --black 0% --out "
                        + film)
                .split(" ");
    }

    private static void expect(int status, String... words) {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
        if (CommandLine.run(words, out, out) != status) {
            throw new IllegalStateException(String.join(" ", words) + ": " + said.toString(StandardCharsets.UTF_8));
        }
    }
}
