package greyground.fuzz;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;
import java.util.stream.Stream;

/** What every way in has in common: a file on a fast disk, and the one allowed way of saying no. */
public final class Hostile {
    private static final Path SHARED_MEMORY = Path.of("/dev/shm");
    private static final Path FOLDER = folder();

    private Hostile() {}

    /** Work on bytes from outside. */
    @FunctionalInterface
    public interface Work {
        /** Does it; a {@link Refusal} is an answer, whatever else is thrown is a finding. */
        void run() throws Exception;
    }

    private static Path folder() {
        try {
            Path folder = Files.isWritable(SHARED_MEMORY)
                    ? Files.createTempDirectory(SHARED_MEMORY, "greyground-fuzz")
                    : Files.createTempDirectory("greyground-fuzz");
            Runtime.getRuntime().addShutdownHook(new Thread(() -> clear(folder), "fuzz folder"));
            return folder;
        } catch (IOException nowhere) {
            throw new UncheckedIOException(nowhere);
        }
    }

    private static void clear(Path folder) {
        for (java.io.File left : folder.toFile().listFiles()) {
            left.delete();
        }
        folder.toFile().delete();
    }

    /** A folder for this process alone. */
    public static Path scratch() {
        return FOLDER;
    }

    /** A file of these bytes; the next of the same name replaces it. */
    public static Path file(String name, byte[] bytes) {
        try {
            return Files.write(FOLDER.resolve(name), bytes);
        } catch (IOException full) {
            throw new UncheckedIOException(full);
        }
    }

    /** Takes every seed once, so that loading classes is not taken for slowness. */
    public static void warm(String way, Consumer<byte[]> target) {
        try (Stream<Path> seeds = Files.list(Fuzzing.KEPT.resolve(way).resolve("seeds"))) {
            for (Path seed : seeds.toList()) {
                target.accept(Files.readAllBytes(seed));
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    /** Runs it; a refusal must be one line that says something. */
    public static void answered(Work work) {
        try {
            work.run();
        } catch (Refusal refusal) {
            String said = String.valueOf(refusal.getMessage());
            if (said.isBlank() || said.equals("null") || said.lines().count() != 1) {
                throw new AssertionError("a refusal that says little: " + said, refusal);
            }
        } catch (Exception other) {
            throw new AssertionError("neither done nor refused", other);
        }
    }
}
