package greyground.cli;

import greyground.Sweep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;

/**
 * Gives every damaged picture to the command line, one after the other in one machine of little memory: arguments FOLDER EACH. FOLDER is
 * this machine's folder for temporary files too. Prints what is wrong, a line each, then {@code films N refused M slowest S ms}.
 */
final class MalformedArtRun {
    static final int MOST_SECONDS = 10;

    private MalformedArtRun() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        Path film = folder.resolve("film.pdf");
        List<String> faults = new ArrayList<>();
        int films = 0;
        int refused = 0;
        long slowest = 0;
        ExecutorService clock = Executors.newSingleThreadExecutor(task -> {
            Thread thread = new Thread(task);
            thread.setDaemon(true);
            return thread;
        });
        // The response of this workshop's plate is computed once; it is no part of any picture.
        Attempt.done(words(MalformedArt.SOUND.resolve("grey16.tif"), film));
        Files.delete(film);
        for (MalformedArt.Mutant mutant : Sweep.of(MalformedArt.all(Integer.parseInt(arguments[1])))) {
            Path art = Files.write(folder.resolve(mutant.name()), mutant.bytes());
            long start = System.nanoTime();
            try {
                Attempt attempt =
                        clock.submit(() -> Attempt.of(words(art, film))).get(MOST_SECONDS, TimeUnit.SECONDS);
                films += attempt.status() == 0 ? 1 : 0;
                refused += attempt.status() == 1 ? 1 : 0;
                String fault = fault(attempt, Files.exists(film));
                if (!fault.isEmpty()) {
                    faults.add(mutant.name() + ": " + fault);
                }
            } catch (TimeoutException slow) {
                faults.add(mutant.name() + ": not done after " + MOST_SECONDS + " s");
                break;
            } catch (ExecutionException thrown) {
                faults.add(mutant.name() + ": " + thrown.getCause());
            }
            slowest = Math.max(slowest, System.nanoTime() - start);
            Files.deleteIfExists(film);
            Files.delete(art);
            List<String> left = left(folder);
            if (!left.isEmpty()) {
                faults.add(mutant.name() + ": left behind " + left);
            }
        }
        faults.forEach(System.out::println);
        System.out.println("films " + films + " refused " + refused + " slowest " + slowest / 1_000_000 + " ms");
        System.exit(0);
    }

    /** The command line that makes the smallest of films. */
    static Object[] words(Path art, Path film) {
        return new Object[] {
            "positive", art, "--plate", "30x30mm", "--resolution", "300", "--ruling", "30/cm", "--out", film
        };
    }

    /** What is wrong with how one damaged picture was answered; empty if nothing is. */
    static String fault(Attempt attempt, boolean filmThere) {
        String err = attempt.err();
        if (attempt.status() == 0) {
            return err.isEmpty() && filmThere ? "" : "done, but " + err;
        }
        boolean oneLine = err.startsWith("greyground: ")
                && err.endsWith("\n")
                && err.strip().lines().count() == 1;
        boolean plain = Stream.of("Exception", "Error", "unforeseen", "at java", ": null")
                .noneMatch(err::contains);
        boolean sure = attempt.status() == 1 && attempt.out().isEmpty() && !filmThere;
        return oneLine && plain && sure ? "" : "status " + attempt.status() + ", " + err;
    }

    private static List<String> left(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> !name.startsWith("said") && !name.equals("cache") && !name.startsWith("hsperf"))
                    .toList();
        }
    }
}
