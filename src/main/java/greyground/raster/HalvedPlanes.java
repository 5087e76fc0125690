package greyground.raster;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * A plane and the same made smaller by halves, so that a picture of a screen's size is drawn from few pixels. Each pixel is the
 * mean of four in linear light; an odd last row or column stands for itself. In memory, a third of the plane on top of it.
 *
 * <p>Immutable once made; any thread may read it.
 */
public final class HalvedPlanes {
    private static final int ROWS = 128;

    /** Smaller ones save nothing. */
    private static final int SMALLEST = 512;

    private final List<GreyPlane> planes;

    private HalvedPlanes(List<GreyPlane> planes) {
        this.planes = List.copyOf(planes);
    }

    /**
     * Halves a plane until its longer side is short.
     *
     * @param plane whoever opened it closes it, once this is no longer used
     * @param threads at least 1
     */
    public static HalvedPlanes of(GreyPlane plane, int threads, Progress progress) throws IOException {
        List<GreyPlane> planes = new ArrayList<>();
        planes.add(plane);
        GreyPlane last = plane;
        double from = 0;
        while (Math.max(last.width(), last.height()) > SMALLEST) {
            double to = from + (1 - from) * 0.75;
            last = half(last, threads, progress.part(from, to));
            planes.add(last);
            from = to;
        }
        return new HalvedPlanes(planes);
    }

    private static GreyPlane half(GreyPlane plane, int threads, Progress progress) throws IOException {
        int width = (plane.width() + 1) / 2;
        int height = (plane.height() + 1) / 2;
        short[][] rows = new short[height][];
        Bands.<short[][]>inOrder(
                height,
                ROWS,
                threads,
                () -> {
                    short[] upper = new short[plane.width()];
                    short[] lower = new short[plane.width()];
                    return (first, count) -> {
                        short[][] band = new short[count][width];
                        for (int y = 0; y < count; y++) {
                            plane.readRow(2 * (first + y), upper);
                            plane.readRow(Math.min(plane.height() - 1, 2 * (first + y) + 1), lower);
                            halve(upper, lower, band[y]);
                        }
                        return band;
                    };
                },
                (first, count, band) -> System.arraycopy(band, 0, rows, first, count),
                progress);
        return new HeapPlane(width, rows);
    }

    private static void halve(short[] upper, short[] lower, short[] into) {
        int last = upper.length - 1;
        for (int x = 0; x < into.length; x++) {
            int right = Math.min(last, 2 * x + 1);
            int sum = (upper[2 * x] & 0xFFFF)
                    + (upper[right] & 0xFFFF)
                    + (lower[2 * x] & 0xFFFF)
                    + (lower[right] & 0xFFFF);
            into[x] = (short) ((sum + 2) >> 2);
        }
    }

    public GreyPlane whole() {
        return planes.get(0);
    }

    /**
     * The plane halved so often.
     *
     * @param halvings 0 to as many as were made
     */
    public GreyPlane halved(int halvings) {
        return planes.get(halvings);
    }

    /**
     * How often to halve for a picture in which one pixel covers {@code scale} of the plane's: no more than leaves a pixel of
     * the plane for each of the picture's.
     */
    public int halvingsFor(double scale) {
        int halvings = 0;
        for (double left = scale; left >= 2 && halvings < planes.size() - 1; left /= 2) {
            halvings++;
        }
        return halvings;
    }
}
