package greyground.cli;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.Sweep;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Another Java with the classes under test. */
final class OwnProcess {
    private final Process process;
    private final Path said;

    private OwnProcess(Process process, Path said) {
        this.process = process;
        this.said = said;
    }

    /**
     * Starts one; what it prints goes to {@code said.txt} and its cache lies in {@code folder}.
     *
     * @param machine options of the machine, such as -Xmx256m
     */
    static OwnProcess start(Path folder, List<String> machine, Class<?> main, Object... words) throws IOException {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(machine);
        command.addAll(List.of(
                "-Djava.awt.headless=true",
                Sweep.option(),
                "-cp",
                System.getProperty("java.class.path"),
                main.getName()));
        Arrays.stream(words).map(String::valueOf).forEach(command::add);
        return start(folder, command);
    }

    /** Starts a whole command line. */
    static OwnProcess start(Path folder, List<String> command) throws IOException {
        Path said = Files.createTempFile(folder, "said", ".txt");
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(said.toFile());
        builder.environment()
                .putIfAbsent("XDG_CACHE_HOME", folder.resolve("cache").toString());
        return new OwnProcess(builder.start(), said);
    }

    Process process() {
        return process;
    }

    /** Its exit status; it must end within so many seconds. */
    int ended(int seconds) throws Exception {
        boolean ended = process.waitFor(seconds, TimeUnit.SECONDS);
        if (!ended) {
            process.destroyForcibly().waitFor();
        }
        assertTrue(ended, "still running after " + seconds + " s: " + said());
        return process.exitValue();
    }

    /** What it printed, both streams. */
    String said() {
        try {
            return Files.readString(said);
        } catch (IOException silent) {
            return silent.toString();
        }
    }
}
