package greyground.app.live;

import greyground.app.sight.LivePicture;
import greyground.app.sight.LiveView;
import greyground.raster.HalvedPlanes;
import greyground.tone.Srgb;
import greyground.tone.ToneCurve;
import java.util.LinkedHashMap;
import java.util.Map;

/** Greys of the windows looked at last: a change of tone alone need not draw the art again. One thread uses it. */
public final class LiveGreys {
    private static final int KEPT = 3;

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
                key -> LiveArt.greys(planes, left, top, across, down, view.width(), view.height()));
    }

    /** The opaque screen grey of each grey code; nobody may change the table. */
    public static int[] ofLuminance() {
        return OF_LUMINANCE;
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
