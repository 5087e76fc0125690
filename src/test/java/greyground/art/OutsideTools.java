package greyground.art;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * Runs independent picture tools (vips, ImageMagick, libtiff, libwebp, Little CMS). Where one is missing the test is skipped on
 * a desk and fails on a build machine, which is told by CI=true in the environment.
 */
final class OutsideTools {
    private OutsideTools() {}

    static void need(String tool) {
        boolean there = false;
        for (String folder : System.getenv().getOrDefault("PATH", "").split(":")) {
            there |= Files.isExecutable(Path.of(folder, tool));
        }
        if (!there && "true".equals(System.getenv("CI"))) {
            fail(tool + " is not installed; a build machine must have it");
        }
        assumeTrue(there, tool + " is not installed");
    }

    /** Runs a command in {@code folder}; words part at blanks. Returns what it printed. */
    static String run(Path folder, String command) throws Exception {
        return run(folder, List.of(command.split(" ")), null);
    }

    static String run(Path folder, List<String> words, String input) throws Exception {
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
        if (!process.waitFor(60, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            fail(words + " did not end");
        }
        String said = Files.readString(out, java.nio.charset.StandardCharsets.ISO_8859_1);
        assertEquals(0, process.exitValue(), () -> words + ": " + said);
        return said;
    }
}
