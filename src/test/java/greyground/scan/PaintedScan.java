package greyground.scan;

import greyground.chart.Area;
import greyground.chart.CornerCode;
import greyground.chart.LevelPatch;
import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.raster.ArrayPlane;
import greyground.raster.GreyPlane;
import greyground.tone.Lightness;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleBinaryOperator;
import java.util.function.DoubleUnaryOperator;

/**
 * A scan of an invented print of a test plate, painted pixel by pixel at given tones: even fields, no grain unless asked. Pixels are means of
 * nine points of a print drawn in cells of 50 micrometres.
 */
final class PaintedScan {
    private static final double CELL = 50;
    private static final double PAPER = 95;
    static final double SCANNED_WHITE = 0.9;

    private final TestPlate plate;
    private final int printWidth;
    private final int printHeight;
    private final float[] print;
    private double pixelsPerInch = 300;
    private double turnedDegrees;
    private boolean mirrored;
    private double marginMillimetres = 10;
    private double[] bent = new double[8];
    private double noise = 0.002;
    private double step = 1;
    private DoubleBinaryOperator lamp = (u, v) -> 1;
    private double sideways;
    private double downwards;

    private PaintedScan(TestPlate plate, DoubleUnaryOperator tone) {
        this.plate = plate;
        this.printWidth = (int) Math.round(plate.recipe().widthMicrometres() / CELL);
        this.printHeight = (int) Math.round(plate.recipe().heightMicrometres() / CELL);
        this.print = new float[printWidth * printHeight];
        Arrays.fill(print, light(tone.applyAsDouble(0)));
        for (LevelPatch patch : plate.patches()) {
            fill(patch.area(), tone.applyAsDouble(patch.coverage()));
        }
        for (Target target : plate.targets()) {
            if (target instanceof Target.Dark dark) {
                fill(dark.area(), tone.applyAsDouble(dark.coveragePerMille() / 1000.0));
            } else if (!(target instanceof Target.Numeral) && !(target instanceof Target.Star)) {
                fill(target.area(), tone.applyAsDouble(0.8));
            }
        }
        for (CornerCode code : plate.codes()) {
            int module = code.area().width() / CornerCode.MODULES;
            for (CornerCode.Run run : code.runs()) {
                fill(
                        new Area(
                                code.area().left() + run.from() * module,
                                code.area().top() + run.row() * module,
                                (run.to() - run.from()) * module,
                                module),
                        tone.applyAsDouble(0.75));
            }
        }
    }

    /** A print on paper of L* 95 whose tones follow the coverage. */
    static PaintedScan of(TestPlate plate, DoubleUnaryOperator lightnessOfCoverage) {
        return new PaintedScan(plate, lightnessOfCoverage);
    }

    /** L* of a print that grows darker in an ordinary way, with a little tint on clear ground. */
    static double usualTone(double coverage) {
        return 93 - 76 * Math.sqrt(coverage);
    }

    PaintedScan at(double ppi) {
        this.pixelsPerInch = ppi;
        return this;
    }

    PaintedScan turned(double degrees) {
        this.turnedDegrees = degrees;
        return this;
    }

    PaintedScan mirrored() {
        this.mirrored = true;
        return this;
    }

    /** Paper round the plate on the scan; below 0 the plate is cut. */
    PaintedScan margin(double millimetres) {
        this.marginMillimetres = millimetres;
        return this;
    }

    /** Moves the window over the print. */
    PaintedScan moved(double acrossMillimetres, double downMillimetres) {
        this.sideways = acrossMillimetres;
        this.downwards = downMillimetres;
        return this;
    }

    /** Moves each corner by so many millimetres, x then y, clockwise from the top left: a bent perspective. */
    PaintedScan bent(double... millimetres) {
        this.bent = millimetres;
        return this;
    }

    /** Deviation of each pixel, as a share of white. */
    PaintedScan noisy(double share) {
        this.noise = share;
        return this;
    }

    /** Values the scan keeps: 256 for 8 bits. */
    PaintedScan kept(int levels) {
        this.step = 1.0 / (levels - 1);
        return this;
    }

    /** Light over the scan, 0..1 across and down. */
    PaintedScan lit(DoubleBinaryOperator light) {
        this.lamp = light;
        return this;
    }

    /** Overprints an area: a hand, a stain, a hair. */
    PaintedScan stained(Area area, double lightness) {
        fill(area, lightness);
        return this;
    }

    private void fill(Area area, double lightness) {
        int fromX = (int) Math.round(area.left() / CELL);
        int toX = Math.min(printWidth, Math.max(fromX + 1, (int) Math.round(area.right() / CELL)));
        int fromY = (int) Math.round(area.top() / CELL);
        int toY = Math.min(printHeight, Math.max(fromY + 1, (int) Math.round(area.bottom() / CELL)));
        for (int y = fromY; y < toY; y++) {
            Arrays.fill(print, y * printWidth + fromX, y * printWidth + toX, light(lightness));
        }
    }

    private static float light(double lightness) {
        return (float) Lightness.toLuminance(lightness);
    }

    /** Where the plate truly lies on the scan. */
    Projective place() {
        double width = plate.recipe().widthMicrometres();
        double height = plate.recipe().heightMicrometres();
        double perMillimetre = pixelsPerInch / 25.4;
        double cos = Math.cos(Math.toRadians(turnedDegrees));
        double sin = Math.sin(Math.toRadians(turnedDegrees));
        double[] x = {0, width, width, 0};
        double[] y = {0, 0, height, height};
        double[] scanX = new double[4];
        double[] scanY = new double[4];
        for (int i = 0; i < 4; i++) {
            double u = (x[i] - width / 2) / 1000 * (mirrored ? -1 : 1);
            double v = (y[i] - height / 2) / 1000;
            scanX[i] = (cos * u - sin * v + bent[2 * i]) * perMillimetre;
            scanY[i] = (sin * u + cos * v + bent[2 * i + 1]) * perMillimetre;
        }
        double left = Arrays.stream(scanX).min().orElseThrow() - (marginMillimetres + sideways) * perMillimetre;
        double top = Arrays.stream(scanY).min().orElseThrow() - (marginMillimetres + downwards) * perMillimetre;
        List<Projective.Pair> pairs = new java.util.ArrayList<>();
        for (int i = 0; i < 4; i++) {
            pairs.add(new Projective.Pair(x[i], y[i], scanX[i] - left, scanY[i] - top));
        }
        return Projective.through(pairs, true);
    }

    /** The corners as the print reads, clockwise from the top left. */
    List<Double> corners() {
        Projective place = place();
        double width = plate.recipe().widthMicrometres();
        double height = plate.recipe().heightMicrometres();
        return List.of(
                place.x(0, 0),
                place.y(0, 0),
                place.x(width, 0),
                place.y(width, 0),
                place.x(width, height),
                place.y(width, height),
                place.x(0, height),
                place.y(0, height));
    }

    GreyPlane plane() {
        List<Double> corners = corners();
        double right = Math.max(Math.max(corners.get(0), corners.get(2)), Math.max(corners.get(4), corners.get(6)));
        double bottom = Math.max(Math.max(corners.get(1), corners.get(3)), Math.max(corners.get(5), corners.get(7)));
        double perMillimetre = pixelsPerInch / 25.4;
        int width = (int) Math.ceil(right + (marginMillimetres - sideways) * perMillimetre);
        int height = (int) Math.ceil(bottom + (marginMillimetres - downwards) * perMillimetre);
        Projective back = place().inverse();
        return ArrayPlane.of(width, height, (x, y) -> {
            double sum = 0;
            for (int i = 0; i < 9; i++) {
                double px = x + (i % 3 + 0.5) / 3;
                double py = y + (i / 3 + 0.5) / 3;
                sum += at(back.x(px, py), back.y(px, py)) / 9;
            }
            double signal = SCANNED_WHITE * sum * lamp.applyAsDouble((double) x / width, (double) y / height);
            signal += noise * bell(x, y);
            return (int) Math.round(GreyPlane.WHITE * (step < 1 ? Math.rint(signal / step) * step : signal));
        });
    }

    private double at(double xMicrometres, double yMicrometres) {
        int x = (int) Math.floor(xMicrometres / CELL);
        int y = (int) Math.floor(yMicrometres / CELL);
        return x >= 0 && y >= 0 && x < printWidth && y < printHeight
                ? print[y * printWidth + x]
                : Lightness.toLuminance(PAPER);
    }

    /** Noise that depends on the place alone: the sum of four even ones, its deviation 1. */
    private static double bell(int x, int y) {
        double sum = 0;
        long state = x * 0x9E3779B97F4A7C15L ^ y * 0xC2B2AE3D27D4EB4FL;
        for (int i = 0; i < 4; i++) {
            state = (state ^ (state >>> 29)) * 0xBF58476D1CE4E5B9L + 0x94D049BB133111EBL;
            sum += (state >>> 11) * 0x1.0p-53 - 0.5;
        }
        return sum * Math.sqrt(3);
    }
}
