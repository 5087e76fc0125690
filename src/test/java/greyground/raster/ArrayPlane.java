package greyground.raster;

/** A plane in memory, for tests. */
public record ArrayPlane(int width, int height, short[] codes) implements GreyPlane {
    /** Computes a grey code from a place. */
    @FunctionalInterface
    public interface Picture {
        int grey(int x, int y);
    }

    public static ArrayPlane of(int width, int height, Picture picture) {
        short[] codes = new short[Math.multiplyExact(width, height)];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                codes[y * width + x] = (short) Math.max(0, Math.min(WHITE, picture.grey(x, y)));
            }
        }
        return new ArrayPlane(width, height, codes);
    }

    /** One grey all over, without memory for each pixel. */
    public static GreyPlane uniform(int width, int height, int grey) {
        return new GreyPlane() {
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
                java.util.Arrays.fill(into, 0, width, (short) grey);
            }

            @Override
            public void close() {}
        };
    }

    @Override
    public void readRow(int y, short[] into) {
        System.arraycopy(codes, y * width, into, 0, width);
    }

    @Override
    public void close() {}
}
