package greyground.output;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Assumptions;

/** Runs an independent reader. Where it is not installed the test is left out, but under CI=true it fails. */
public final class ExternalTool {
    private ExternalTool() {}

    /** Runs a command in {@code folder} and returns what it printed, both streams; refuses a failure or two minutes. */
    public static String run(Path folder, String... command) throws Exception {
        Path printed = Files.createTempFile("printed", ".txt");
        Process process;
        try {
            process = new ProcessBuilder(List.of(command))
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(printed.toFile())
                    .start();
        } catch (IOException missing) {
            if ("true".equals(System.getenv("CI"))) {
                throw new AssertionError(command[0] + " is not installed", missing);
            }
            Assumptions.abort(command[0] + " is not installed");
            throw missing;
        }
        if (!process.waitFor(2, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            throw new AssertionError(command[0] + " did not end");
        }
        String words = new String(Files.readAllBytes(printed), StandardCharsets.UTF_8);
        Files.delete(printed);
        assertEquals(0, process.exitValue(), () -> String.join(" ", command) + ": " + words);
        return words;
    }

    /** Whether strace is here and the system lets a process be traced. */
    public static boolean traces() throws InterruptedException {
        try {
            Process trial = new ProcessBuilder("strace", "-qq", "-o", "/dev/null", "true")
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return trial.waitFor(20, TimeUnit.SECONDS) && trial.exitValue() == 0;
        } catch (IOException missing) {
            return false;
        }
    }
}
