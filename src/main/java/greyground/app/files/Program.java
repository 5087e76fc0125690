package greyground.app.files;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;

/** The program's own name and version, as films record them. */
public final class Program {
    /** The version that the build was given in pom.xml. */
    public static final String VERSION = version();

    private Program() {}

    private static String version() {
        try (InputStream in = Program.class.getResourceAsStream("version")) {
            if (in == null) {
                throw new IllegalStateException("the build left out the program's version");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException fault) {
            throw new UncheckedIOException(fault);
        }
    }

    public static String words() {
        return "Greyground " + VERSION;
    }
}
