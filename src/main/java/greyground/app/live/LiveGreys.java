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

    private final Map<Key, short[]> kept = new LinkedHashMap<>(8, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, short[]> eldest) {
            return size() > KEPT;
        }
    };

    /** Which part of which art, and how large. */
    private record Key(
            HalvedPlanes planes, double left, double top, double across, double down, int width, int height) {}

    /** The window's greys, drawn or at hand; nobody may change them. */
    short[] of(HalvedPlanes planes, double left, double top, double across, double down, LiveView view) {
        return kept.computeIfAbsent(
                new Key(planes, left, top, across, down, view.width(), view.height()),
                key -> drawn(planes, left, top, across, down, view.width(), view.height()));
    }

    /** The opaque screen grey of each grey code; nobody may change the table. */
    public static int[] ofLuminance() {
        return OF_LUMINANCE;
    }

    /**
     * Greys of a window over the art.
     *
     * @param left art place of the window's left edge, in art pixels
     * @param top art place of its upper edge
     * @param across art pixels of one pixel of the window, across
     * @param down the same, down
     */
    static short[] drawn(
            HalvedPlanes planes, double left, double top, double across, double down, int width, int height) {
        int halvings = planes.halvingsFor(Math.min(across, down));
        GreyPlane plane = planes.halved(halvings);
        double shrunk = 1 << halvings;
        ResampleAxis columns = ResampleAxis.of(width, left / shrunk, across / shrunk, plane.width());
        ResampleAxis rows = ResampleAxis.of(height, top / shrunk, down / shrunk, plane.height());
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

    private static int[] made() {
        int[] table = new int[ToneCurve.CODES];
        for (int grey = 0; grey < table.length; grey++) {
            int code = (int) Math.round(255 * Srgb.encode((double) grey / (ToneCurve.CODES - 1)));
            table[grey] = LivePicture.OPAQUE | code << 16 | code << 8 | code;
        }
        return table;
    }
}
