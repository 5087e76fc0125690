package greyground.art.touch;

import greyground.raster.GreyPlane;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import greyground.tone.ToneCurve;
import greyground.tone.UsableCoverage;

/**
 * Contrast of fine detail raised before the plate lowers it: L' = L + A (L - G), G being L* blurred by a Gaussian. What would come to nothing
 * is left out: noise, what lies past the art's range, and slopes so steep that the grain would be cut into slivers.
 *
 * @param amount A, 0 or more
 * @param radiusMicrometres the Gaussian's standard deviation on the plate
 * @param acrossMicrometres of one art pixel on the plate
 * @param downMicrometres the same, down
 * @param range of the art
 * @param curve of the plate, art to film
 * @param spacingMicrometres of the film's dots
 * @param held coverages whose dots and lands are wide enough for the plate; detail brings no tone out of them
 */
public record Crispness(
        double amount,
        double radiusMicrometres,
        double acrossMicrometres,
        double downMicrometres,
        ArtRange range,
        ToneCurve curve,
        double spacingMicrometres,
        UsableCoverage held)
        implements Touch {
    /** The Gaussian ends here, in standard deviations. */
    private static final double ENDS = 3.5;

    /** A radius of fewer art pixels sharpens nothing that is there (assumed). */
    private static final double LEAST_PIXELS = 0.7;

    /** Differences in L* that are noise, and those that are none; between them a smooth step (assumed). */
    private static final double NOISE = 0.5;

    private static final double DETAIL = 1.5;

    /** L* before either end of the range where detail begins to give way (assumed). */
    private static final double KNEE = 3;

    /** Coverage may change by so much over a dot's spacing: above it slivers begin, on a stand-in grain of ramps. */
    private static final double STEEPEST = 1.5;

    /**
     * The amount that gives back what a plate takes from detail of so many spacings: A = (1/M - 1) / (1 - G), M and G being what plate and
     * mask leave of its contrast.
     */
    public static double amountFor(
            double spacingMicrometres, double blurMicrometres, double radiusMicrometres, double spacings) {
        double frequency = 1 / (spacings * spacingMicrometres);
        return (1 / left(blurMicrometres, frequency) - 1) / (1 - left(radiusMicrometres, frequency));
    }

    private static double left(double sigma, double frequency) {
        return StrictMath.exp(-2 * StrictMath.pow(StrictMath.PI * sigma * frequency, 2));
    }

    /** Whether the art is too coarse for the radius. */
    public boolean tooCoarse() {
        return radiusMicrometres < LEAST_PIXELS * Math.max(acrossMicrometres, downMicrometres);
    }

    private static float[] weights(double sigma) {
        int ends = (int) Math.ceil(ENDS * sigma);
        double[] weights = new double[ends + 1];
        double sum = 0;
        for (int i = 0; i <= ends; i++) {
            weights[i] = StrictMath.exp(-0.5 * (i / sigma) * (i / sigma));
            sum += i == 0 ? weights[i] : 2 * weights[i];
        }
        float[] shares = new float[ends + 1];
        for (int i = 0; i <= ends; i++) {
            shares[i] = (float) (weights[i] / sum);
        }
        return shares;
    }

    private int blurRows() {
        return (int) Math.ceil(ENDS * radiusMicrometres / downMicrometres);
    }

    /** A row more than the Gaussian's, for the slope. */
    @Override
    public int reach() {
        return blurRows() + 1;
    }

    @Override
    public short[] touched(short[] window, int width, int firstRow, int count) {
        return new Band(window, width, count).touched();
    }

    /** One window at work. */
    private final class Band {
        private final float[] down = weights(radiusMicrometres / downMicrometres);
        private final float[] across = weights(radiusMicrometres / acrossMicrometres);
        private final short[] window;
        private final int width;
        private final int count;
        /** L* of every pixel of the window. */
        private final float[] light;

        private final float[] coverage = new float[ToneCurve.CODES];

        /** L* between which the plate holds what is added, of the art's own range. */
        private final float dark;

        private final float pale;

        Band(short[] window, int width, int count) {
            this.window = window;
            this.width = width;
            this.count = count;
            float[] lightness = new float[ToneCurve.CODES];
            for (int grey = 0; grey < lightness.length; grey++) {
                lightness[grey] = (float) Lightness.ofLuminance(grey / range.white() / GreyPlane.WHITE);
            }
            this.light = new float[(count + 2 * reach()) * width];
            for (int i = 0; i < light.length; i++) {
                light[i] = lightness[window[i] & 0xFFFF];
            }
            for (int grey = 0; grey < coverage.length; grey++) {
                coverage[grey] = curve.coverage(grey) / (float) ToneCurve.SOLID;
            }
            int palest = ToneCurve.CODES - 1;
            while (palest > 0 && coverage[palest] < held.least()) {
                palest--;
            }
            int darkest = 0;
            while (darkest < palest && coverage[darkest] > held.most()) {
                darkest++;
            }
            this.pale = Math.min(100, lightness[palest]);
            this.dark = Math.max((float) Lightness.ofLuminance(range.relativeBlack()), lightness[darkest]);
        }

        short[] touched() {
            // One row more above and below, between which slopes are taken.
            int rows = count + 2;
            float[] more = new float[rows * width];
            float[] before = new float[rows * width];
            float[] change = new float[rows * width];
            float[] blurred = new float[width];
            float[] padded = new float[width + 2 * (across.length - 1)];
            for (int y = 0; y < rows; y++) {
                blur(y, padded, blurred);
                for (int x = 0; x < width; x++) {
                    int at = y * width + x;
                    int from = (y + reach() - 1) * width + x;
                    more[at] = more(light[from], blurred[x]);
                    before[at] = coverage[window[from] & 0xFFFF];
                    change[at] = more[at] == 0 ? 0 : coverage[code(light[from] + more[at])] - before[at];
                }
            }
            short[] touched = new short[count * width];
            for (int y = 0; y < count; y++) {
                for (int x = 0; x < width; x++) {
                    int at = (y + 1) * width + x;
                    int from = (y + reach()) * width + x;
                    touched[y * width + x] = more[at] == 0
                            ? window[from]
                            : (short) code(light[from] + (float) kept(before, change, at, x) * more[at]);
                }
            }
            return touched;
        }

        /** The Gaussian's mean about every pixel of a row, rows first; whole rows at a time, which the machine adds eight pixels at once. */
        private void blur(int y, float[] padded, float[] into) {
            int ends = across.length - 1;
            int middle = (y + reach() - 1) * width;
            for (int x = 0; x < width; x++) {
                padded[ends + x] = down[0] * light[middle + x];
            }
            for (int i = 1; i < down.length; i++) {
                float weight = down[i];
                int above = middle - i * width;
                int below = middle + i * width;
                for (int x = 0; x < width; x++) {
                    padded[ends + x] += weight * (light[above + x] + light[below + x]);
                }
            }
            for (int i = 1; i <= ends; i++) {
                padded[ends - i] = padded[ends + Touch.folded(-i, width)];
                padded[ends + width - 1 + i] = padded[ends + Touch.folded(width - 1 + i, width)];
            }
            for (int x = 0; x < width; x++) {
                into[x] = across[0] * padded[ends + x];
            }
            for (int i = 1; i <= ends; i++) {
                float weight = across[i];
                for (int x = 0; x < width; x++) {
                    into[x] += weight * (padded[ends + x - i] + padded[ends + x + i]);
                }
            }
        }

        /** What is added to a lightness, in L*: no noise, and less and less towards the ends of the range. */
        private float more(float here, float blurred) {
            float detail = here - blurred;
            float step = (float) Math.max(0, Math.min(1, (Math.abs(detail) - NOISE) / (DETAIL - NOISE)));
            if (step == 0) {
                return 0;
            }
            double wished = here + amount * step * step * (3 - 2 * step) * detail;
            double limited = here + limited(wished) - limited(here);
            double held = Math.max(Math.min(here, dark), Math.min(Math.max(here, pale), limited));
            return (float) (held - here);
        }

        private double limited(double value) {
            if (value > pale - KNEE) {
                return pale - KNEE * StrictMath.exp((pale - KNEE - value) / KNEE);
            }
            return value < dark + KNEE ? dark + KNEE * StrictMath.exp((value - dark - KNEE) / KNEE) : value;
        }

        /** The share of the change that leaves the slope of coverage below {@link #STEEPEST}. */
        private double kept(float[] before, float[] change, int at, int x) {
            int left = x == 0 ? at : at - 1;
            int right = x == width - 1 ? at : at + 1;
            double steep = slope(before, left, right, at);
            double added = slope(change, left, right, at);
            double room = Math.max(0, STEEPEST / spacingMicrometres - steep);
            return added <= room ? 1 : room / added;
        }

        private double slope(float[] of, int left, int right, int at) {
            double across = (of[right] - of[left]) / (2 * acrossMicrometres);
            double down = (of[at + width] - of[at - width]) / (2 * downMicrometres);
            return Math.sqrt(across * across + down * down);
        }

        private int code(float wanted) {
            double luminance = Lightness.toLuminance(Math.max(0, wanted)) * range.white();
            return (int) Math.min(GreyPlane.WHITE, luminance * GreyPlane.WHITE + 0.5);
        }
    }
}
