package greyground.app.files;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import org.jspecify.annotations.Nullable;

/**
 * A turn at changing one file: programs that compare what it holds before they replace it take turns, so that none compares while another
 * replaces. The turn is a lock on {@code .NAME.greyground-turn} beside the file, which the system gives back when a program is killed.
 */
final class OneAtATime {
    /** A change takes far less than a second (assumed); whoever waits longer has met something else. */
    private static final long MOST_SECONDS = 10;

    private static final long PAUSE_MILLISECONDS = 5;

    /** Lengths enough that two programs hardly ever choose the same. */
    private static final long MOST_BYTES = 1 << 20;

    /** A second thread must not even open the file: the system gives locks to processes. */
    private static final ReentrantLock HERE = new ReentrantLock();

    private final Path turn;
    private final @Nullable RandomAccessFile opened;

    private OneAtATime(Path turn, @Nullable RandomAccessFile opened) {
        this.turn = turn;
        this.opened = opened;
    }

    @FunctionalInterface
    interface Change<T> {
        T make() throws IOException;
    }

    /**
     * Waits for a turn, changes the file and gives the turn back; refuses after ten seconds of waiting. Where the file system knows no locks,
     * everybody's turn is at once.
     */
    static <T> T change(String what, Path file, Change<T> change) throws IOException {
        OneAtATime turn = of(what, file);
        try {
            return change.make();
        } finally {
            turn.close();
        }
    }

    private static OneAtATime of(String what, Path file) {
        Path turn = SafeFile.folderOf(file).resolve("." + Siblings.plain(file) + ".greyground-turn");
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(MOST_SECONDS);
        try {
            if (HERE.tryLock(MOST_SECONDS, TimeUnit.SECONDS)) {
                OneAtATime given = null;
                try {
                    while (given == null && System.nanoTime() < end) {
                        given = taken(turn);
                        if (given == null) {
                            Thread.sleep(PAUSE_MILLISECONDS);
                        }
                    }
                } finally {
                    if (given == null) {
                        HERE.unlock();
                    }
                }
                if (given != null) {
                    return given;
                }
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new CancellationException("stopped");
        }
        throw Refusal.failure("the " + what + " " + file
                + " is being changed by another program; it is left as it is: try again when that is done");
    }

    private static @Nullable OneAtATime taken(Path turn) {
        RandomAccessFile opened;
        try {
            opened = new RandomAccessFile(turn.toFile(), "rw");
        } catch (IOException unwritable) {
            // Either the last turn's file is just going, or nothing can be written here, as the write itself will say.
            return Files.isWritable(SafeFile.folderOf(turn)) ? null : new OneAtATime(turn, null);
        }
        boolean held = false;
        try {
            held = opened.getChannel().tryLock(Long.MAX_VALUE - 1, 1, false) != null && isNamed(opened, turn);
            return held ? new OneAtATime(turn, opened) : null;
        } catch (IOException noLocks) {
            return new OneAtATime(turn, null);
        } finally {
            if (!held) {
                closed(opened);
            }
        }
    }

    /**
     * Whether the name still stands for the file that is held: whoever had the turn before takes name and file away. It is told by a
     * length that nobody else chooses. Opening the file once more to look inside would, on closing it, give the lock back (POSIX).
     */
    private static boolean isNamed(RandomAccessFile opened, Path turn) throws IOException {
        long length = 1 + ThreadLocalRandom.current().nextLong(MOST_BYTES);
        // Lengthened without a byte written, which a full disk allows.
        opened.setLength(length);
        try {
            return Files.size(turn) == length;
        } catch (NoSuchFileException gone) {
            return false;
        }
    }

    private static void closed(RandomAccessFile file) {
        try {
            file.close();
        } catch (IOException stays) {
            // The system closes it with the program.
            return;
        }
    }

    private void close() {
        try {
            if (opened != null) {
                Files.deleteIfExists(turn);
            }
        } catch (IOException stays) {
            // An empty file, which the next turn uses.
            return;
        } finally {
            if (opened != null) {
                closed(opened);
            }
            HERE.unlock();
        }
    }
}
