package greyground.film.compose;

import greyground.grain.ThresholdTile;
import greyground.raster.PixelRect;
import greyground.tone.ToneCurve;

/**
 * Finds the coverage to ask of a grain so that one field gets exactly the share of black it should have. A field cuts through dots
 * at its edges and holds but a few hundred of them, so the plain share would miss by a percent or so.
 */
final class EvenCoverage {
    private EvenCoverage() {}

    /**
     * The coverage that leaves a field's black share nearest to what is wished.
     *
     * @param box on the sheet, not mirrored
     * @param share 0 to 1
     * @return in 1/65 535; 0 and 65 535 for a clear and a solid field
     */
    static int of(ThresholdTile grain, PixelRect box, double share) {
        if (share <= 0 || share >= 1) {
            return share <= 0 ? 0 : ToneCurve.SOLID;
        }
        int[] count = new int[ToneCurve.SOLID];
        char[] row = new char[box.width()];
        for (int y = box.top(); y < box.bottom(); y++) {
            grain.copyRow(box.left(), y, box.width(), row);
            for (char threshold : row) {
                count[threshold]++;
            }
        }
        double wished = share * box.width() * box.height();
        long black = 0;
        for (int threshold = 0; threshold < count.length; threshold++) {
            long more = black + count[threshold];
            if (more >= wished) {
                return more - wished <= wished - black ? threshold + 1 : threshold;
            }
            black = more;
        }
        return ToneCurve.SOLID;
    }
}
