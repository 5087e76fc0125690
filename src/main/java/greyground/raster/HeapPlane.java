package greyground.raster;

/** A grey plane held in memory, one array a row, so that no single allocation is as large as the picture. */
final class HeapPlane implements PlaneStore.Filled {
    private final int width;
    private final short[][] rows;

    HeapPlane(int width, short[][] rows) {
        this.width = width;
        this.rows = rows;
    }

    @Override
    public void putRun(int x, int y, int count, short[] samples, int from) {
        System.arraycopy(samples, from, rowToFill(y), x, count);
    }

    private short[] rowToFill(int y) {
        synchronized (rows) {
            if (rows[y] == null) {
                rows[y] = new short[width];
            }
            return rows[y];
        }
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return rows.length;
    }

    @Override
    public void readRow(int y, short[] into) {
        System.arraycopy(rows[y], 0, into, 0, width);
    }

    @Override
    public void readRun(int x, int y, int count, short[] into, int at) {
        System.arraycopy(rows[y], x, into, at, count);
    }

    @Override
    public void close() {
        // Memory is given back when nobody holds the plane.
    }
}
