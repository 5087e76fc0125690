package greyground.art.burnish;

import greyground.art.touch.Touch;
import greyground.raster.GreyPlane;
import greyground.tone.ArtRange;
import greyground.tone.Lightness;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Art with its touches: L' = lim(L + sum of D m), D being the strength of each touch and m its mask. The sum is made of whole 2^-20 L*, so that
 * touches may be told in any order and give the same bits, and two of +5 are one of +10.
 *
 * <p>The limit lets nothing past the art's white where it is burnished, nor past its black where it is deepened, and leaves no two tones changed
 * about: up to a knee of 3 L* before the end it does nothing, from there on it nears the end as an exponential does. Where that would darken what
 * is burnished, or lighten what is deepened, the tone stays; so what no touch reaches keeps its bits.
 */
public final class LocalTones implements Touch {
    /** L* before either end where the limit begins (assumed). */
    static final double KNEE = 3;

    private static final double UNITS = 1 << 20;

    private final List<LocalTouch> touches;
    private final double[][] down;
    private final Lie lie;
    private final double white;
    private final double dark;
    private final double[] lightness = new double[GreyPlane.WHITE + 1];

    /**
     * How a plane's pixels lie on the plate.
     *
     * @param left millimetres of plate from its left edge to that of the first column
     * @param top the same, down
     * @param across millimetres of one pixel
     * @param down millimetres of one pixel
     */
    public record Lie(double left, double top, double across, double down) {}

    public LocalTones(List<LocalTouch> touches, Lie lie, ArtRange range) {
        this.touches = List.copyOf(touches);
        this.down = this.touches.stream().map(LocalTouch::down).toArray(double[][]::new);
        this.lie = lie;
        this.white = range.white();
        this.dark = Lightness.ofLuminance(range.relativeBlack());
        for (int grey = 0; grey < lightness.length; grey++) {
            lightness[grey] = Lightness.ofLuminance(grey / white / GreyPlane.WHITE);
        }
    }

    /** A tone after a change, both in L*, between the ends of a range. */
    static double limited(double lightness, double change, double dark, double light) {
        double wished = lightness + change;
        if (change > 0) {
            double knee = light - KNEE;
            double held = wished > knee ? light - KNEE * StrictMath.exp((knee - wished) / KNEE) : wished;
            return Math.max(lightness, held);
        }
        if (change < 0) {
            double knee = dark + KNEE;
            double held = wished < knee ? dark + KNEE * StrictMath.exp((wished - knee) / KNEE) : wished;
            return Math.min(lightness, held);
        }
        return lightness;
    }

    @Override
    public int reach() {
        return 0;
    }

    @Override
    public short[] touched(short[] window, int width, int firstRow, int count) {
        short[] touched = Arrays.copyOf(window, count * width);
        List<LocalTouch> near = near(lie.top() + firstRow * lie.down(), lie.top() + (firstRow + count) * lie.down());
        if (near.isEmpty()) {
            return touched;
        }
        long[] sums = new long[width];
        double[] masks = new double[width];
        for (int y = 0; y < count; y++) {
            if (sum(near, lie.top() + (firstRow + y + 0.5) * lie.down(), sums, masks)) {
                for (int x = 0; x < width; x++) {
                    if (sums[x] != 0) {
                        int at = y * width + x;
                        touched[at] = (short) changed(window[at] & 0xFFFF, sums[x] / UNITS);
                    }
                }
                Arrays.fill(sums, 0);
            }
        }
        return touched;
    }

    private List<LocalTouch> near(double top, double bottom) {
        List<LocalTouch> near = new ArrayList<>();
        for (int i = 0; i < down.length; i++) {
            if (down[i][0] <= bottom && down[i][1] >= top) {
                near.add(touches.get(i));
            }
        }
        return near;
    }

    /** Adds what every touch does in a row; whether any does. */
    private boolean sum(List<LocalTouch> near, double middle, long[] sums, double[] masks) {
        boolean any = false;
        double first = lie.left() + lie.across() / 2;
        for (LocalTouch touch : near) {
            double[] span = touch.across(middle);
            int from = (int) Math.max(0, Math.ceil((span[0] - first) / lie.across() - 1e-9));
            int to = (int) Math.min(sums.length - 1, Math.floor((span[1] - first) / lie.across() + 1e-9));
            if (from > to) {
                continue;
            }
            touch.masks(new LocalTouch.Pixels(middle, first + from * lie.across(), lie.across(), to + 1 - from), masks);
            double units = touch.lightness() * UNITS;
            for (int x = from; x <= to; x++) {
                sums[x] += (long) Math.rint(units * masks[x - from]);
            }
            any = true;
        }
        return any;
    }

    private int changed(int code, double change) {
        double before = lightness[code];
        double after = limited(before, change, dark, 100);
        if (after == before) {
            return code;
        }
        double luminance = Lightness.toLuminance(Math.max(0, after)) * white * GreyPlane.WHITE;
        return (int) Math.min(GreyPlane.WHITE, luminance + 0.5);
    }

    /**
     * What touches come to on a plate.
     *
     * @param lighter share of the plate that gets lighter by half an L* or more, 0 to 1
     * @param mostLighter in L*, before the limit
     * @param darker the same, darker
     * @param mostDarker in L*, 0 or more
     */
    public record Extent(double lighter, double mostLighter, double darker, double mostDarker) {}

    /** What touches come to on a plate of a size, looked at in places a two-hundredth of its sides apart. */
    public static Extent extent(List<LocalTouch> touches, double acrossMillimetres, double downMillimetres) {
        int side = 200;
        Lie lie = new Lie(0, 0, acrossMillimetres / side, downMillimetres / side);
        LocalTones tones = new LocalTones(touches, lie, ArtRange.WHOLE);
        double lighter = 0;
        double darker = 0;
        double most = 0;
        double least = 0;
        double[] masks = new double[side];
        for (int y = 0; y < side; y++) {
            long[] sums = new long[side];
            tones.sum(tones.near(y * lie.down(), (y + 1) * lie.down()), (y + 0.5) * lie.down(), sums, masks);
            for (long sum : sums) {
                double change = sum / UNITS;
                lighter += change >= 0.5 ? 1 : 0;
                darker += change <= -0.5 ? 1 : 0;
                most = Math.max(most, change);
                least = Math.min(least, change);
            }
        }
        return new Extent(lighter / side / side, most, darker / side / side, -least);
    }
}
