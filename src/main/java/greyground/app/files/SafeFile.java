package greyground.app.files;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * Writes a file so that its name only ever points at a whole one: into a sibling, synced, then renamed over the old.
 *
 * <p>{@link Siblings} names the siblings and clears away what a killed program left of them. A name that stands for another file keeps
 * doing so: the file it stands for is replaced.
 */
public final class SafeFile {
    private SafeFile() {}

    /** Fills the sibling file. The channel stands at 0 and may be read, written and moved at will. */
    @FunctionalInterface
    public interface Body {
        /** Writes everything; what is thrown leaves the old file as it was. */
        void fill(FileChannel channel) throws IOException;
    }

    /**
     * Refuses early, before long work, if {@code destination} could not be written. Only ordinary files are ever replaced.
     *
     * @param what the trade's name of the file, for example "film"
     */
    static void checkWritable(String what, Path destination) {
        Path real = meant(what, destination);
        Path folder = folderOf(real);
        if (!Files.isDirectory(folder)) {
            throw refused(what, destination, "the folder " + folder + " does not exist; make it or choose another");
        }
        if (!Files.isWritable(folder) || (isThere(what, destination, real) && !Files.isWritable(real))) {
            throw refused(what, destination, "it is write-protected; choose another place");
        }
    }

    private static boolean isThere(String what, Path destination, Path real) {
        try {
            BasicFileAttributes there =
                    Files.readAttributes(real, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
            if (there.isDirectory()) {
                throw refused(what, destination, "it is a folder; add a file name to it");
            }
            if (!there.isRegularFile()) {
                throw refused(what, destination, "a device or pipe of that name is there; choose another name");
            }
            return true;
        } catch (NoSuchFileException isNew) {
            return false;
        } catch (IOException unreachable) {
            throw refused(what, destination, FileFault.words(unreachable) + "; choose another name");
        }
    }

    private static Refusal refused(String what, Path destination, String why) {
        return Refusal.failure("cannot write the " + what + " " + destination + ": " + why);
    }

    /** Writes {@code destination} whole or not at all. */
    public static void write(String what, Path destination, Body body) {
        write(what, destination, body, (sibling, real) -> {
            rename(sibling, real);
            return true;
        });
    }

    /**
     * Writes {@code destination} whole, or not at all if that name is taken, even if it is taken at the very moment.
     *
     * @return whether it was written
     */
    static boolean writeNew(String what, Path destination, Body body) {
        if (Files.exists(destination, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        return write(what, destination, body, SafeFile::takeName);
    }

    /** Gives the whole sibling its name, and says whether it could. */
    @FunctionalInterface
    private interface Naming {
        boolean name(Path sibling, Path destination) throws IOException;
    }

    private static boolean write(String what, Path destination, Body body, Naming naming) {
        checkWritable(what, destination);
        Path real = meant(what, destination);
        Path folder = folderOf(real);
        Siblings.clearAbandoned(folder);
        Path sibling = Siblings.begin(folder, real);
        try {
            try (FileChannel channel = FileChannel.open(
                    sibling, StandardOpenOption.CREATE_NEW, StandardOpenOption.READ, StandardOpenOption.WRITE)) {
                Siblings.hold(channel);
                body.fill(channel);
                channel.force(true);
            }
            boolean named = naming.name(sibling, real);
            syncFolder(folder);
            return named;
        } catch (IOException failed) {
            throw Refusal.failure(
                    "cannot write the " + what + " " + destination + ": " + FileFault.words(failed)
                            + "; what stood there before is untouched, make room or choose another place",
                    failed);
        } finally {
            Siblings.end(sibling);
        }
    }

    /** The file that a name stands for: its own, or the one that a link leads to. */
    private static Path meant(String what, Path destination) {
        try {
            return Files.isSymbolicLink(destination) ? destination.toRealPath() : destination;
        } catch (IOException standsForNothing) {
            throw refused(
                    what, destination, "it is a link that leads to no file; choose another name, or correct the link");
        }
    }

    private static void rename(Path sibling, Path destination) throws IOException {
        try {
            Files.move(sibling, destination, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException unsupported) {
            Files.move(sibling, destination, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** A second name for the same file: the system gives it to one only. */
    private static boolean takeName(Path sibling, Path destination) throws IOException {
        try {
            Files.createLink(destination, sibling);
            return true;
        } catch (FileAlreadyExistsException taken) {
            return false;
        } catch (UnsupportedOperationException | FileSystemException noSecondNames) {
            // Such file systems only know moving, which looks for the name first.
            try {
                Files.move(sibling, destination);
                return true;
            } catch (FileAlreadyExistsException taken) {
                return false;
            }
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

    /** Never made absolute: where the system's language can't spell the folder one is in, its absolute name leads nowhere. */
    static Path folderOf(Path destination) {
        Path parent = destination.getParent();
        return parent == null ? Path.of("") : parent;
    }
}
