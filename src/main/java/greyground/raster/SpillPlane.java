package greyground.raster;

import greyground.quantity.Refusal;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.ShortBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A grey plane in a temporary file, for art larger than the memory it may take; the file vanishes when it is closed.
 *
 * <p>A {@link RandomAccessFile} and not a channel: an interrupted thread would close a channel under every other reader.
 * Where the system allows it the name is removed as soon as the file is open, so that even a killed run leaves nothing.
 */
final class SpillPlane implements PlaneStore.Filled {
    private final int width;
    private final int height;
    private final Path path;
    // Guarded by this: seeking and reading are one step.
    private final RandomAccessFile file;
    private boolean closed;
    // One row's bytes for each thread; nothing else is shared but the file.
    private final ThreadLocal<byte[]> rowBytes;

    /** Makes the file in {@code folder} and takes its disk now, so that a full disk shows at once. */
    SpillPlane(Path folder, int width, int height) {
        this.width = width;
        this.height = height;
        this.rowBytes = ThreadLocal.withInitial(() -> new byte[2 * width]);
        long bytes = 2L * width * height;
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

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public void putRun(int x, int y, int count, short[] samples, int from) {
        byte[] bytes = rowBytes.get();
        samples(bytes).put(samples, from, count);
        synchronized (this) {
            try {
                file.seek(place(x, y));
                file.write(bytes, 0, 2 * count);
            } catch (IOException failed) {
                throw Refusal.failure(
                        "the spill file can't be written: free some disk, or name another folder", failed);
            }
        }
    }

    @Override
    public void readRow(int y, short[] into) {
        readRun(0, y, width, into, 0);
    }

    @Override
    public void readRun(int x, int y, int count, short[] into, int at) {
        Objects.checkIndex(y, height);
        Objects.checkFromIndexSize(x, count, width);
        byte[] bytes = rowBytes.get();
        synchronized (this) {
            try {
                file.seek(place(x, y));
                file.readFully(bytes, 0, 2 * count);
            } catch (IOException failed) {
                throw Refusal.failure("the spill file can't be read: open the art again", failed);
            }
        }
        samples(bytes).get(into, at, count);
    }

    private long place(int x, int y) {
        return 2 * ((long) width * y + x);
    }

    private static ShortBuffer samples(byte[] bytes) {
        return ByteBuffer.wrap(bytes).order(ByteOrder.nativeOrder()).asShortBuffer();
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
