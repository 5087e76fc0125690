package greyground.raster;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A temporary file of 16-bit samples that vanishes when it is closed.
 *
 * <p>A {@link RandomAccessFile} and not a channel: an interrupted thread would close a channel under every other reader.
 * Where the system allows it the name is removed as soon as the file is open, so that even a killed run leaves nothing.
 */
final class SpillFile implements AutoCloseable {
    private static final VarHandle SAMPLE =
            MethodHandles.byteArrayViewVarHandle(short[].class, ByteOrder.LITTLE_ENDIAN);

    private final Path path;
    // Guarded by this: seeking and reading are one step.
    private final RandomAccessFile file;
    private boolean closed;

    /** Makes the file in {@code folder} and takes {@code bytes} of disk for it now, so that a full disk shows at once. */
    SpillFile(Path folder, long bytes) {
        try {
            long free = Files.getFileStore(folder).getUsableSpace();
            if (free < bytes) {
                throw Refusal.failure(
                        "the spill folder " + folder + " has " + (free >> 20) + " MiB free; this art needs "
                                + ((bytes >> 20) + 1) + " MiB there: free some disk, or name another folder");
            }
            path = Files.createTempFile(folder, "greyground-", ".spill");
            file = open(path, bytes);
        } catch (IOException failed) {
            throw Refusal.failure(
                    "no spill file can be made in " + folder + ": name a folder that can be written", failed);
        }
    }

    private static RandomAccessFile open(Path path, long bytes) throws IOException {
        RandomAccessFile opened = new RandomAccessFile(path.toFile(), "rw");
        opened.setLength(bytes);
        try {
            Files.delete(path);
        } catch (IOException keptByTheSystem) {
            // Some systems keep the name of an open file; then it goes when the program ends, or on close.
            path.toFile().deleteOnExit();
        }
        return opened;
    }

    synchronized void write(long at, byte[] bytes, int count) {
        try {
            file.seek(at);
            file.write(bytes, 0, count);
        } catch (IOException failed) {
            throw Refusal.failure("the spill file can't be written: free some disk, or name another folder", failed);
        }
    }

    synchronized void read(long at, byte[] bytes, int count) {
        try {
            file.seek(at);
            file.readFully(bytes, 0, count);
        } catch (IOException failed) {
            throw Refusal.failure("the spill file can't be read: open the art again", failed);
        }
    }

    static void pack(short[] samples, int from, byte[] bytes, int count) {
        for (int i = 0; i < count; i++) {
            SAMPLE.set(bytes, 2 * i, samples[from + i]);
        }
    }

    static void unpack(byte[] bytes, short[] samples, int from, int count) {
        for (int i = 0; i < count; i++) {
            samples[from + i] = (short) SAMPLE.get(bytes, 2 * i);
        }
    }

    @Override
    public synchronized void close() {
        if (closed) {
            return;
        }
        closed = true;
        try {
            file.close();
            Files.deleteIfExists(path);
        } catch (IOException failed) {
            throw Refusal.failure(
                    "the spill file could not be given back: see to the folder for temporary files", failed);
        }
    }
}
