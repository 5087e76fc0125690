package greyground.app;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Writes a file so that its name only ever points at a whole one: into a sibling, synced, then renamed over the old.
 *
 * <p>The sibling is named {@code .NAME.greyground-PID.part}. It is deleted on failure and on Ctrl-C; one left by a killed
 * program is deleted by the next write to the same folder, once its process is gone.
 */
public final class SafeFile {
    private static final Pattern SIBLING = Pattern.compile("\\..*\\.greyground-(\\d+)\\.part");
    private static final Set<Path> UNDER_WAY = ConcurrentHashMap.newKeySet();

    static {
        Runtime.getRuntime()
                .addShutdownHook(new Thread(() -> UNDER_WAY.forEach(SafeFile::deleteQuietly), "unfinished files"));
    }

    private SafeFile() {}

    /** Fills the sibling file. The channel stands at 0 and may be read, written and moved at will. */
    @FunctionalInterface
    public interface Body {
        /** Writes everything; what is thrown leaves the old file as it was. */
        void fill(FileChannel channel) throws Exception;
    }

    /**
     * Refuses early, before long work, if {@code destination} could not be written.
     *
     * @param what the trade's name of the file, for example "film"
     */
    public static void checkWritable(String what, Path destination) {
        Path folder = folderOf(destination);
        if (!Files.isDirectory(folder)) {
            throw Refusal.failure("cannot write the " + what + " " + destination + ": the folder " + folder
                    + " does not exist; make it or choose another");
        }
        if (Files.isDirectory(destination)) {
            throw Refusal.failure(
                    "cannot write the " + what + " " + destination + ": it is a folder; add a file name to it");
        }
        if (!Files.isWritable(folder) || (Files.exists(destination) && !Files.isWritable(destination))) {
            throw Refusal.failure(
                    "cannot write the " + what + " " + destination + ": it is write-protected; choose another place");
        }
    }

    /**
     * Refuses to write over another file of the same job.
     *
     * @param what the trade's name of the file to be written
     * @param other the trade's name of the file that must survive
     */
    public static void checkDistinct(String what, Path destination, String other, Path otherFile) {
        if (isSame(destination, otherFile)) {
            throw Refusal.use("the " + what + " " + destination + " would replace the " + other
                    + ": give the two different names");
        }
    }

    private static boolean isSame(Path one, Path other) {
        try {
            if (Files.exists(one) && Files.exists(other)) {
                return Files.isSameFile(one, other);
            }
            return folderOf(one)
                    .toRealPath()
                    .resolve(one.getFileName())
                    .equals(folderOf(other).toRealPath().resolve(other.getFileName()));
        } catch (IOException unreachable) {
            return one.toAbsolutePath()
                    .normalize()
                    .equals(other.toAbsolutePath().normalize());
        }
    }

    /** Writes {@code destination} whole or not at all. */
    public static void write(String what, Path destination, Body body) throws Exception {
        checkWritable(what, destination);
        Path folder = folderOf(destination);
        clearAbandoned(folder);
        Path sibling = folder.resolve("." + destination.getFileName() + ".greyground-"
                + ProcessHandle.current().pid() + ".part");
        UNDER_WAY.add(sibling);
        try {
            try (FileChannel channel = FileChannel.open(
                    sibling,
                    StandardOpenOption.CREATE,
                    StandardOpenOption.TRUNCATE_EXISTING,
                    StandardOpenOption.READ,
                    StandardOpenOption.WRITE)) {
                body.fill(channel);
                channel.force(true);
            }
            rename(sibling, destination);
            syncFolder(folder);
        } catch (IOException failed) {
            throw Refusal.failure(
                    "cannot write the " + what + " " + destination + ": " + reason(failed)
                            + "; what stood there before is untouched, make room or choose another place",
                    failed);
        } finally {
            deleteQuietly(sibling);
            UNDER_WAY.remove(sibling);
        }
    }

    private static void rename(Path sibling, Path destination) throws IOException {
        try {
            Files.move(sibling, destination, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (java.nio.file.AtomicMoveNotSupportedException unsupported) {
            Files.move(sibling, destination, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Makes the rename itself durable, where the system lets a folder be opened; elsewhere there is nothing to sync. */
    private static void syncFolder(Path folder) {
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (IOException notOffered) {
            return;
        }
    }

    /** Deletes siblings whose program is no longer running. */
    private static void clearAbandoned(Path folder) {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, ".*.part")) {
            for (Path file : files) {
                Matcher matcher = SIBLING.matcher(file.getFileName().toString());
                if (matcher.matches() && !UNDER_WAY.contains(file) && !isRunning(matcher.group(1))) {
                    deleteQuietly(file);
                }
            }
        } catch (IOException unreadable) {
            // Nothing can be cleared in a folder that cannot be listed; the write itself will say what is wrong.
            return;
        }
    }

    private static boolean isRunning(String pid) {
        try {
            return ProcessHandle.of(Long.parseLong(pid)).isPresent();
        } catch (NumberFormatException tooLong) {
            return false;
        }
    }

    private static Path folderOf(Path destination) {
        Path parent = destination.toAbsolutePath().getParent();
        return parent == null ? destination.toAbsolutePath() : parent;
    }

    private static String reason(IOException failed) {
        String message = failed.getMessage();
        return message == null ? failed.getClass().getSimpleName() : message;
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
