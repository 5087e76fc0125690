package greyground.desk.window;

import static org.junit.jupiter.api.Assertions.assertEquals;

import greyground.output.ExternalTool;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledForJreRange;
import org.junit.jupiter.api.condition.JRE;
import org.junit.jupiter.api.io.TempDir;

/** The main job, a reading, a proof and the window make no connection, not even to this machine, and look no name up. */
class NoConnectionIT {
    private static final List<String> ALL_DONE =
            List.of("guarded", "positive 0", "plan 0", "proof 0", "read 0", "shown", "closed");

    @TempDir
    Path folder;

    private List<String> said(List<String> before) throws Exception {
        ExternalTool.run(folder, "xauth", "-V");
        Files.writeString(folder.resolve("strip.csv"), "coverage,density\n0,0.12\n50,0.4\n100,2.5\n");
        List<String> command = new ArrayList<>(List.of("xvfb-run", "-a", "-s", "-screen 0 1400x900x24"));
        command.addAll(before);
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-Djava.security.manager=allow",
                "-Duser.home=" + folder,
                "-cp",
                RealWindowIT.absolute(System.getProperty("java.class.path")),
                NoConnection.class.getName(),
                folder.toString(),
                Path.of("").toAbsolutePath().toString()));
        return ExternalTool.run(folder, command.toArray(String[]::new))
                .lines()
                .filter(line -> line.matches("(no )?guard.*|tried .*|shown .*|closed|[a-z]+ \\d"))
                .map(line -> line.replaceFirst("^shown .*", "shown"))
                .toList();
    }

    /** The guard sees what Java tries, names looked up too; where a process may be traced, the system's own record of it is read as well. */
    @Test
    @EnabledForJreRange(max = JRE.JAVA_23, disabledReason = "newer Javas have no security manager")
    void nothingIsTried() throws Exception {
        Path trace = folder.resolve("trace.txt");
        List<String> tracer = ExternalTool.traces()
                ? List.of("strace", "-f", "-qq", "-e", "trace=connect,bind,sendto", "-o", trace.toString())
                : List.of();
        assertEquals(ALL_DONE, said(tracer));
        if (!tracer.isEmpty()) {
            List<String> internet = new String(Files.readAllBytes(trace), StandardCharsets.ISO_8859_1)
                    .lines()
                    .filter(line -> line.contains("AF_INET"))
                    .toList();
            assertEquals(List.of(), internet);
        }
    }
}
