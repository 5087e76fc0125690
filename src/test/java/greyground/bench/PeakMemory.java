package greyground.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The most memory this process has held. */
final class PeakMemory {
    private PeakMemory() {}

    /** The line in which Linux keeps it, or that it is unknown. */
    static String words() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status)
                ? Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("VmHWM"))
                        .findFirst()
                        .orElse("unknown")
                : "unknown here";
    }
}
