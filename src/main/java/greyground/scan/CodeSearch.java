package greyground.scan;

import com.google.zxing.DecodeHintType;
import com.google.zxing.ReaderException;
import com.google.zxing.ResultPoint;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.common.DecoderResult;
import com.google.zxing.common.DetectorResult;
import com.google.zxing.qrcode.decoder.Decoder;
import com.google.zxing.qrcode.decoder.QRCodeDecoderMetaData;
import com.google.zxing.qrcode.detector.Detector;
import greyground.chart.Area;
import greyground.chart.CodeText;
import greyground.chart.CornerCode;
import greyground.chart.TestPlate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Looks for corner codes in a map of roots, window by window, so that one code's squares are not taken for another's. Within a window
 * a place is dark where it is darker than the mean about it: vignetting and toned paper don't matter.
 */
final class CodeSearch {
    /** A code turned by 45 degrees at 5.8 values to a module lies whole in one of the windows. */
    private static final int WINDOW = 320;

    private static final int STRIDE = 116;
    /** How far off another code may be, as a share of its distance: a code's small square predicts no perspective (assumed). */
    private static final double UNSURE = 0.15;

    private static final int[] SURROUNDS = {24, 12};

    /** Roots of light within a window that differ less than this hold no code: 0.03 is some 3 L* on paper (assumed). */
    private static final double LEAST_CONTRAST = 0.03;

    private static final Map<DecodeHintType, ?> HINTS = Map.of(DecodeHintType.TRY_HARDER, Boolean.TRUE);

    private CodeSearch() {}

    /**
     * A code that was found.
     *
     * @param text what it says
     * @param corners middles of its finders in scan pixels, x then y: top left, top right, bottom left, as the print reads
     * @param modulePixels scan pixels to a module
     */
    record Found(String text, List<Double> corners, double modulePixels) {
        Found {
            corners = List.copyOf(corners);
        }

        /** Middle of the code across, in scan pixels. */
        double middleX() {
            return (corners.get(2) + corners.get(4)) / 2;
        }

        /** Middle of the code down, in scan pixels. */
        double middleY() {
            return (corners.get(3) + corners.get(5)) / 2;
        }

        /** Whether both are the same code at the same place. */
        boolean sameAs(Found other) {
            double away = Math.max(Math.abs(middleX() - other.middleX()), Math.abs(middleY() - other.middleY()));
            return text.equals(other.text) && away < 12 * modulePixels;
        }

        /** Where another place of the plate lies if the scan is flat there, x then y in scan pixels. */
        double[] predicted(Area own, double xMicrometres, double yMicrometres) {
            double between = 18.0 / CornerCode.MODULES * own.width();
            double across = (xMicrometres - own.middleX()) / between;
            double down = (yMicrometres - own.middleY()) / between;
            return new double[] {
                middleX() + across * (corners.get(2) - corners.get(0)) + down * (corners.get(4) - corners.get(0)),
                middleY() + across * (corners.get(3) - corners.get(1)) + down * (corners.get(5) - corners.get(1))
            };
        }
    }

    /**
     * A window on a map, its corner and turn.
     *
     * @param left of the window, in values of the map
     * @param top of the window, in values of the map
     */
    private record Window(int left, int top) {}

    /**
     * Every code of ours on the map, each once. Windows whose middle lies where {@code skipped} says are left out.
     *
     * @param soft whether each value is averaged with its neighbours, which helps against grain and hurts on coarse scans
     */
    static List<Found> codes(LightMap roots, boolean soft, Predicate<double[]> skipped) {
        List<Window> windows = windows(roots, skipped);
        List<List<Found>> each = IntStream.range(0, windows.size())
                .parallel()
                .mapToObj(i -> inWindow(roots, soft, windows.get(i)))
                .toList();
        List<Found> found = new ArrayList<>();
        for (List<Found> some : each) {
            for (Found one : some) {
                if (found.stream().noneMatch(one::sameAs)) {
                    found.add(one);
                }
            }
        }
        return found;
    }

    /** Where the other codes of the charts that were found should be, in scan pixels, and how unsure that is. */
    static List<double[]> likely(List<Found> found) {
        List<double[]> likely = new ArrayList<>();
        for (Found one : found) {
            List<CornerCode> codes = TestPlate.codesBeside(CodeText.read(one.text()));
            for (CornerCode own : codes) {
                if (own.text().equals(one.text())) {
                    for (CornerCode code : codes) {
                        double[] at = one.predicted(
                                own.area(), code.area().middleX(), code.area().middleY());
                        double away = StrictMath.hypot(at[0] - one.middleX(), at[1] - one.middleY());
                        if (found.stream().noneMatch(other -> other.text().equals(code.text()))) {
                            likely.add(new double[] {at[0], at[1], UNSURE * away});
                        }
                    }
                }
            }
        }
        return likely;
    }

    private static List<Window> windows(LightMap roots, Predicate<double[]> skipped) {
        List<Window> windows = new ArrayList<>();
        for (int top = 0; top == 0 || top + WINDOW - STRIDE < roots.height(); top += STRIDE) {
            for (int left = 0; left == 0 || left + WINDOW - STRIDE < roots.width(); left += STRIDE) {
                double[] middle = {(left + WINDOW / 2.0) * roots.step(), (top + WINDOW / 2.0) * roots.step()};
                if (!skipped.test(middle)) {
                    windows.add(new Window(left, top));
                }
            }
        }
        return windows;
    }

    private static List<Found> inWindow(LightMap roots, boolean soft, Window window) {
        List<Found> found = new ArrayList<>();
        LightMap part = roots.window(window.left(), window.top(), WINDOW);
        if (part.width() < 50 || part.height() < 50) {
            return found;
        }
        // The grain of the code's dark parts goes.
        LightMap seen = soft ? part.softened() : part;
        float least = Float.MAX_VALUE;
        float most = 0;
        for (int y = 0; y < seen.height(); y++) {
            for (int x = 0; x < seen.width(); x++) {
                least = Math.min(least, seen.value(x, y));
                most = Math.max(most, seen.value(x, y));
            }
        }
        if (most - least < LEAST_CONTRAST) {
            return found;
        }
        LightMap.Means means = seen.new Means();
        for (int surround : SURROUNDS) {
            BitMatrix dark = dark(seen, means, surround, 0.06 * (most - least));
            try {
                DetectorResult code = new Detector(dark).detect(HINTS);
                DecoderResult read = new Decoder().decode(code.getBits());
                if (CodeText.isOurs(read.getText())) {
                    ResultPoint[] points = code.getPoints();
                    if (read.getOther() instanceof QRCodeDecoderMetaData turned) {
                        turned.applyMirroredCorrection(points);
                    }
                    found.add(placed(read.getText(), points, roots.step(), window));
                    return found;
                }
            } catch (ReaderException | IllegalArgumentException | ArrayIndexOutOfBoundsException none) {
                // Most windows hold no code.
            }
        }
        return found;
    }

    private static Found placed(String text, ResultPoint[] points, double step, Window window) {
        List<Double> corners = new ArrayList<>();
        for (int i : new int[] {1, 2, 0}) {
            // The detector counts from the middle of a value.
            corners.add((window.left() + points[i].getX()) * step);
            corners.add((window.top() + points[i].getY()) * step);
        }
        double dx = corners.get(2) - corners.get(4);
        double dy = corners.get(3) - corners.get(5);
        double diagonal = Math.sqrt(dx * dx + dy * dy);
        return new Found(text, corners, diagonal / (18 * Math.sqrt(2)));
    }

    /** Dark where darker than the mean of the square about it by more than a share of the window's contrast. */
    private static BitMatrix dark(LightMap seen, LightMap.Means means, int surround, double by) {
        BitMatrix dark = new BitMatrix(seen.width(), seen.height());
        for (int y = 0; y < seen.height(); y++) {
            for (int x = 0; x < seen.width(); x++) {
                if (seen.value(x, y) < means.about(x, y, surround) - by) {
                    dark.set(x, y);
                }
            }
        }
        return dark;
    }
}
