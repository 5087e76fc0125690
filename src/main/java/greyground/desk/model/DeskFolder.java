package greyground.desk.model;

import greyground.app.files.SafeFile;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Where the desk keeps what it must remember between its runs. What can't be kept there is not kept; work goes on. */
public record DeskFolder(Path folder) {
    private static final int LARGEST_BYTES = 8 << 20;

    /** In the user's state folder, by the freedesktop.org base directory rules; elsewhere in the home folder. */
    public static DeskFolder usual() {
        String state = System.getenv("XDG_STATE_HOME");
        Path base = state != null && state.startsWith("/")
                ? Path.of(state)
                : Path.of(System.getProperty("user.home", "."), ".local", "state");
        return new DeskFolder(base.resolve("greyground"));
    }

    /** Keeps a text under a name, whole or not at all. */
    boolean keep(String what, String name, String text) {
        try {
            Files.createDirectories(folder);
            SafeFile.write(
                    what,
                    folder.resolve(name),
                    channel -> channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8))));
            return true;
        } catch (Exception notKept) {
            return false;
        }
    }

    Optional<String> read(String name) {
        Path file = folder.resolve(name);
        try {
            return Files.isRegularFile(file) && Files.size(file) <= LARGEST_BYTES
                    ? Optional.of(Files.readString(file))
                    : Optional.empty();
        } catch (IOException | Refusal unreadable) {
            return Optional.empty();
        }
    }

    void forget(String name) {
        try {
            Files.deleteIfExists(folder.resolve(name));
        } catch (IOException stays) {
            // The next start finds it and asks; that is harmless.
            return;
        }
    }

    /** Gives what was kept another name, unless that is taken; says where it lies then. */
    Optional<Path> rename(String name, String other) {
        try {
            return Optional.of(Files.move(folder.resolve(name), folder.resolve(other)));
        } catch (IOException stays) {
            return Optional.empty();
        }
    }
}
