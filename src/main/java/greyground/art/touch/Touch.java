package greyground.art.touch;

import greyground.raster.Bands;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import java.io.IOException;

/**
 * Something done to every pixel of a plane that depends on the pixels near it and on nothing else, so that bands and threads can't be seen
 * in the result. Past the plane's edge its mirror image goes on.
 */
public interface Touch {
    /** Rows of a band; each thread holds two of them with what lies around. */
    int ROWS = 128;

    /** How many rows above and below a pixel it depends on. */
    int reach();

    /**
     * Touches the middle rows of a window.
     *
     * @param window rows of grey codes, {@link #reach()} of them above and as many below those to be touched
     * @param width pixels across
     * @param firstRow of those to touch, in the plane
     * @param count rows to touch
     * @return them, row after row
     */
    short[] touched(short[] window, int width, int firstRow, int count);

    /**
     * The touched rows of a plane from the top, as {@link Bands} hands them on.
     *
     * @param threads at least 1
     */
    default void rows(GreyPlane plane, int threads, Bands.Taker<short[]> taker, Progress progress) throws IOException {
        rows(plane, ROWS, threads, taker, progress);
    }

    /** The same by bands of another height. */
    default void rows(GreyPlane plane, int bandRows, int threads, Bands.Taker<short[]> taker, Progress progress)
            throws IOException {
        int width = plane.width();
        Bands.<short[]>inOrder(
                plane.height(),
                bandRows,
                threads,
                () -> {
                    short[] window = new short[Math.multiplyExact(bandRows + 2 * reach(), width)];
                    return (first, count) -> {
                        for (int row = 0; row < count + 2 * reach(); row++) {
                            plane.readRun(0, folded(first + row - reach(), plane.height()), width, window, row * width);
                        }
                        return touched(window, width, first, count);
                    };
                },
                taker,
                progress);
    }

    /** The place of a pixel, or of the one whose mirror image it is; edges lie between pixels. */
    static int folded(int place, int size) {
        int within = Math.floorMod(place, 2 * size);
        return within < size ? within : 2 * size - 1 - within;
    }
}
