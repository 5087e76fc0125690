package greyground.app.live;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.raster.EnlargedRows;
import greyground.raster.GreyPlane;
import greyground.raster.HalvedPlanes;
import greyground.raster.ResampleAxis;
import greyground.tone.Srgb;
import greyground.tone.ToneCurve;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.IntStream;

/** Greys of the windows looked at last: a change of tone alone need not draw the art again. One thread uses it. */
public final class LiveGreys {
    private static final int KEPT = 3;

    private static final int BAND_ROWS = 64;

    private static final int[] OF_LUMINANCE = made();

    private final Map<Window, short[]> kept = latest(KEPT);

    /**
     * A window over the art.
     *
     * @param left art place of its left edge, in art pixels
     * @param top art place of its upper edge
     * @param across art pixels of one of its pixels, across
     * @param down the same, down
     */
    record Window(HalvedPlanes planes, double left, double top, double across, double down, int width, int height) {}

    /** A map that keeps what was asked for last. */
    static <K, V> Map<K, V> latest(int most) {
        return new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > most;
            }
        };
    }

    /** The window's greys, drawn or at hand; nobody may change them. */
    short[] of(Window window) {
        return kept.computeIfAbsent(window, LiveGreys::drawn);
    }

    /** The opaque screen grey of each grey code; nobody may change the table. */
    public static int[] ofLuminance() {
        return OF_LUMINANCE;
    }

    static short[] drawn(Window window) {
        int width = window.width();
        int height = window.height();
        int halvings = window.planes().halvingsFor(Math.min(window.across(), window.down()));
        GreyPlane plane = window.planes().halved(halvings);
        double shrunk = 1 << halvings;
        ResampleAxis columns = ResampleAxis.of(width, window.left() / shrunk, window.across() / shrunk, plane.width());
        ResampleAxis rows = ResampleAxis.of(height, window.top() / shrunk, window.down() / shrunk, plane.height());
        short[] greys = new short[width * height];
        int bands = (height + BAND_ROWS - 1) / BAND_ROWS;
        IntStream.range(0, bands).parallel().forEach(band -> {
            EnlargedRows enlarged = new EnlargedRows(plane, columns, rows, 0);
            int[] sums = new int[width];
            for (int y = band * BAND_ROWS; y < Math.min(height, (band + 1) * BAND_ROWS); y++) {
                Arrays.fill(sums, 0);
                enlarged.turnTo(y);
                enlarged.addTo(sums, 0, width);
                for (int x = 0; x < width; x++) {
                    greys[y * width + x] = (short) EnlargedRows.grey(sums[x]);
                }
            }
        });
        return greys;
    }

    /** What colour a pixel of a window has; 0 where there is nothing to see. */
    @FunctionalInterface
    interface Colours {
        int at(int pixel, double across, double down);
    }

    /** Colours the pixels of a window one by one, each by the place of its middle. */
    static LivePicture coloured(LiveView view, Colours colours) {
        int[] pixels = new int[view.width() * view.height()];
        for (int y = 0, i = 0; y < view.height(); y++) {
            double down = view.top() + (y + 0.5) * view.perPixel();
            for (int x = 0; x < view.width(); x++, i++) {
                pixels[i] = colours.at(i, view.left() + (x + 0.5) * view.perPixel(), down);
            }
        }
        return new LivePicture(view.width(), view.height(), pixels);
    }

    private static int[] made() {
        int[] table = new int[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            int code = (int) Math.round(255 * Srgb.encode((double) grey / (ToneCurve.CODES - 1)));
            table[grey] = LivePicture.OPAQUE | code << 16 | code << 8 | code;
        }
        return table;
    }
}
