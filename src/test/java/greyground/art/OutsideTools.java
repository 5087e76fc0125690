package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Runs independent picture tools (vips, ImageMagick, libtiff, libwebp, Little CMS). Where one is missing the test is skipped on
 * a desk and fails on a build machine, which is told by CI=true in the environment.
 */
public final class OutsideTools {
    private OutsideTools() {}

    public static void need(String tool) {
        boolean there = false;
        for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
            there |= Files.isExecutable(Path.of(folder).resolve(tool));
        }
        need(there, tool, System.getenv("CI"));
    }

    /** The rule itself: {@code machine} is "true" on a build machine. */
    static void need(boolean there, String tool, String machine) {
        if (!there && "true".equals(machine)) {
            fail(tool + " is not installed; a build machine must have it");
        }
        assumeTrue(there, tool + " is not installed");
    }

    /** A Python that can do {@code imports}. */
    public static String python(String imports) throws Exception {
        for (String python : List.of("/usr/bin/python3", "python3")) {
            try {
                Process process = new ProcessBuilder(python, "-c", imports)
                        .redirectErrorStream(true)
                        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                        .start();
                if (process.waitFor() == 0) {
                    return python;
                }
            } catch (IOException absent) {
                // Then the next may do.
            }
        }
        need(false, "Python that can " + imports, System.getenv("CI"));
        return "";
    }

    /** Runs a command in {@code folder}; words part at blanks. Returns what it printed. */
    public static String run(Path folder, String command) throws Exception {
        return run(folder, List.of(command.split(" ")), null);
    }

    public static String run(Path folder, List<String> words, String input) throws Exception {
        need(words.get(0));
        Path out = Files.createTempFile(folder, "out", ".txt");
        Path in = Files.createTempFile(folder, "in", ".txt");
        Files.writeString(in, input == null ? "" : input);
        Process process = new ProcessBuilder(new ArrayList<>(words))
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .redirectInput(in.toFile())
                .redirectOutput(out.toFile())
                .start();
        if (!process.waitFor(5, TimeUnit.MINUTES)) {
            process.destroyForcibly();
            fail(words + " did not end");
        }
        String said = Files.readString(out, java.nio.charset.StandardCharsets.ISO_8859_1);
        assertEquals(0, process.exitValue(), () -> words + ": " + said);
        return said;
    }
}
