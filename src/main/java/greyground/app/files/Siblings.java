package greyground.app.files;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Files under way, each beside the file it is to become, named {@code .NAME.greyground-PID.part}.
 *
 * <p>One is deleted when its write fails and on Ctrl-C. One that a killed program left is deleted by the next write to the same folder, if the
 * process in its name no longer runs and nobody holds the file: a program on another machine that shares the folder does.
 */
public final class Siblings {
    private static final Pattern NAME = Pattern.compile("\\..*\\.greyground-(\\d{1,18})\\.part", Pattern.DOTALL);
    /** Of the 255 bytes that most file systems give a name. */
    private static final int LONGEST_NAME = 100;

    private static final Set<Path> UNDER_WAY = ConcurrentHashMap.newKeySet();

    static {
        Runtime.getRuntime()
                .addShutdownHook(new Thread(() -> UNDER_WAY.forEach(Siblings::deleteQuietly), "unfinished files"));
    }

    private Siblings() {}

    /** Takes a name that nothing in the folder and no other write of this process has. */
    public static Path begin(Path folder, Path destination) {
        String end = ".greyground-" + ProcessHandle.current().pid() + ".part";
        for (int other = 1; ; other++) {
            Path sibling = folder.resolve("." + plain(destination) + (other == 1 ? "" : "." + other) + end);
            if (!Files.exists(sibling, LinkOption.NOFOLLOW_LINKS) && UNDER_WAY.add(sibling)) {
                return sibling;
            }
        }
    }

    /** A file's name in letters that every system has, and short enough to be added to. */
    static String plain(Path file) {
        String name = String.valueOf(file.getFileName()).replaceAll("[^ -~]", "_");
        return name.substring(0, Math.min(name.length(), LONGEST_NAME));
    }

    /** Shows other programs that somebody writes here, until the channel is closed. */
    static void hold(FileChannel channel) {
        tried(channel);
    }

    /** The write is over; whatever is left under the sibling's name goes. */
    public static void end(Path sibling) {
        deleteQuietly(sibling);
        UNDER_WAY.remove(sibling);
    }

    /** Deletes siblings whose program is no longer running. */
    public static void clearAbandoned(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, ".*.part")) {
            for (Path file : files) {
                Matcher matcher = NAME.matcher(String.valueOf(file.getFileName()));
                if (matcher.matches()
                        && !UNDER_WAY.contains(file)
                        && !isRunning(Long.parseLong(matcher.group(1)), file)
                        && !isHeld(file)) {
                    deleteQuietly(file);
                }
            }
        } catch (IOException unreadable) {
            // Nothing can be cleared in a folder that cannot be listed; the write itself will say what is wrong.
            return;
        }
    }

    /** Whether the process that began a file still runs; one of that number that started later is another. */
    private static boolean isRunning(long pid, Path file) throws IOException {
        Optional<ProcessHandle> process = ProcessHandle.of(pid);
        if (process.isEmpty()) {
            return false;
        }
        Instant written = Files.getLastModifiedTime(file).toInstant();
        return process.get()
                .info()
                .startInstant()
                .map(start -> !start.isAfter(written))
                .orElse(true);
    }

    private static boolean isHeld(Path file) {
        if (!Files.isRegularFile(file)) {
            return true;
        }
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            return tried(channel) == Held.BY_ANOTHER;
        } catch (IOException vanished) {
            return false;
        }
    }

    private enum Held {
        HERE,
        BY_ANOTHER,
        /** On a file system without locks nobody can say. */
        UNKNOWN
    }

    private static Held tried(FileChannel channel) {
        try {
            @Nullable FileLock lock = channel.tryLock();
            return lock == null ? Held.BY_ANOTHER : Held.HERE;
        } catch (OverlappingFileLockException ours) {
            return Held.BY_ANOTHER;
        } catch (IOException noLocks) {
            return Held.UNKNOWN;
        }
    }

    private static void deleteQuietly(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException stays) {
            // The next write to this folder tries again.
            return;
        }
    }
}
