package greyground.desk.window;

import static org.junit.jupiter.api.Assertions.assertTrue;

import greyground.cli.NewerJavaIT;
import greyground.output.ExternalTool;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window through the system's own toolkit, on a virtual screen: what the tests without a screen can't see. */
class RealWindowIT {
    @TempDir
    Path folder;

    /** Neither the toolkit nor a newer Java adds a word. */
    @Test
    void theWindowOpensShowsItsArtAndCloses() throws Exception {
        Path here = Path.of(System.getProperty("java.home"));
        opens(here);
        Optional<Path> newest = NewerJavaIT.newestBeside(here);
        if (newest.isPresent()) {
            opens(newest.get());
        }
    }

    private void opens(Path java) throws Exception {
        ExternalTool.run(folder, "xauth", "-V");
        String said = ExternalTool.run(
                folder,
                "xvfb-run",
                "-a",
                "-s",
                "-screen 0 1400x900x24",
                java.resolve("bin/java").toString(),
                "-Xmx1g",
                // As the jar's manifest has it.
                "--enable-native-access=ALL-UNNAMED",
                "-Duser.home=" + folder,
                "-cp",
                absolute(System.getProperty("java.class.path")),
                DeskSmoke.class.getName(),
                Path.of("testimages/leaf-alpha.png").toAbsolutePath().toString());
        assertTrue(said.matches("shown \\d+ x \\d+\\Rclosed\\R"), said);
    }

    /** A class path that holds from any folder. */
    static String absolute(String classPath) {
        StringBuilder whole = new StringBuilder();
        for (String part : classPath.split(System.getProperty("path.separator"))) {
            whole.append(whole.length() == 0 ? "" : System.getProperty("path.separator"))
                    .append(Path.of(part).toAbsolutePath());
        }
        return whole.toString();
    }
}
