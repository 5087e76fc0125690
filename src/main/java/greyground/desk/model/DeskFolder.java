package greyground.desk.model;

import greyground.app.files.SafeFile;
import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

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

    /** The name under which a desk keeps something of its own. */
    public static String named(String what, long process) {
        return what + "-" + process + ".json";
    }

    /** Names of what desks kept for themselves that no longer run; none where the folder is not there. */
    public List<String> ofGone(String what) {
        List<String> names = new ArrayList<>();
        Pattern pattern = Pattern.compile(Pattern.quote(what) + "-(\\d+)\\.json");
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, what + "-*.json")) {
            for (Path file : files) {
                String name = String.valueOf(file.getFileName());
                Matcher matcher = pattern.matcher(name);
                if (matcher.matches() && !isRunning(matcher.group(1))) {
                    names.add(name);
                }
            }
        } catch (IOException unreadable) {
            return names;
        }
        return names;
    }

    private static boolean isRunning(String process) {
        try {
            return ProcessHandle.of(Long.parseLong(process)).isPresent();
        } catch (NumberFormatException tooLong) {
            return false;
        }
    }

    /** Keeps a text under a name, whole or not at all; says whether it is kept. */
    public boolean keep(String what, String name, String text) {
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

    public Optional<String> read(String name) {
        Path file = folder.resolve(name);
        try {
            return Files.isRegularFile(file) && Files.size(file) <= LARGEST_BYTES
                    ? Optional.of(Files.readString(file))
                    : Optional.empty();
        } catch (IOException | Refusal unreadable) {
            return Optional.empty();
        }
    }

    public void forget(String name) {
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
