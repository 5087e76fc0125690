package greyground.raster;

import java.util.Objects;

/** A grey plane whose rows lie in a spill file on disk, for art larger than the memory it may take. */
final class SpillPlane implements GreyPlane {
    private final int width;
    private final int height;
    private final SpillFile file;
    // One row's bytes for each thread that reads; nothing else is shared but the file, which locks itself.
    private final ThreadLocal<byte[]> rowBytes;

    SpillPlane(int width, int height, SpillFile file) {
        this.width = width;
        this.height = height;
        this.file = file;
        this.rowBytes = ThreadLocal.withInitial(() -> new byte[2 * width]);
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
    public void readRow(int y, short[] into) {
        readRun(0, y, width, into, 0);
    }

    @Override
    public void readRun(int x, int y, int count, short[] into, int at) {
        Objects.checkIndex(y, height);
        Objects.checkFromIndexSize(x, count, width);
        byte[] bytes = rowBytes.get();
        file.read(2L * ((long) width * y + x), bytes, 2 * count);
        SpillFile.unpack(bytes, into, at, count);
    }

    @Override
    public void close() {
        file.close();
    }
}
