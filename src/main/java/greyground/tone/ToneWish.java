package greyground.tone;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;

/**
 * Where the printmaker wants the art's tones, counted in L* from the art's black, 0, to its white, 100, before they are fitted to the
 * print's range. Points come first, then the middle, then the hardness; none of them turns the order of two tones round.
 *
 * @param points that the curve goes through, from dark to light
 * @param middle how far middle grey moves, in L*; lighter above 0
 * @param hardness of the middle: 1 doubles its contrast and halves that of the ends, -1 the other way round
 */
public record ToneWish(List<Point> points, double middle, double hardness) {
    /** No tone is stretched by more than about two (assumed). */
    public static final Range MIDDLE = new Range(-15, 15, Unit.LIGHTNESS, "0 leaves middle grey where it is");

    /** From half to twice the contrast (assumed). */
    public static final Range HARDNESS = new Range(-1, 1, Unit.SHARE, "0 leaves the contrast as it is");

    public static final Range LIGHTNESS = new Range(0, 100, Unit.LIGHTNESS, "0 is the art's black, 100 its white");

    public static final ToneWish AS_THEY_ARE = new ToneWish(List.of(), 0, 0);

    private static final int MOST_POINTS = 16;

    /**
     * One tone and where it goes.
     *
     * @param from L* of the art, 0 to 100
     * @param to L* wished, 0 to 100
     */
    public record Point(double from, double to) {
        public Point {
            LIGHTNESS.check("tone of the art", from);
            LIGHTNESS.check("tone wished", to);
        }
    }

    public ToneWish {
        points = List.copyOf(points);
        MIDDLE.check("middle", middle);
        HARDNESS.check("hardness", hardness);
        if (points.size() > MOST_POINTS) {
            throw Refusal.use("tones have " + points.size() + " points; they may have " + MOST_POINTS
                    + ": a few are enough, such as 30:38,60:64");
        }
        for (int i = 1; i < points.size(); i++) {
            Point before = points.get(i - 1);
            Point here = points.get(i);
            if (here.from() <= before.from() || here.to() < before.to()) {
                throw Refusal.use(
                        "tones go from " + words(before) + " to " + words(here)
                                + "; points must go from dark to light, and no lighter tone may get darker than a darker one: such as 30:38,60:64");
            }
        }
    }

    private static String words(Point point) {
        return Refusal.plain(point.from()) + ":" + Refusal.plain(point.to());
    }

    public boolean changesNothing() {
        return equals(AS_THEY_ARE);
    }

    /** From a linear luminance of the art to the one wished for in its place; both ends of the range stay unless a point moves them. */
    DoubleUnaryOperator within(ArtRange art) {
        DoubleUnaryOperator curve = curve();
        double black = Lightness.ofLuminance(art.relativeBlack());
        return luminance -> {
            double here = Lightness.ofLuminance(art.relative(luminance));
            double share = Math.max(0, Math.min(1, (here - black) / (100 - black)));
            double wished = black + (100 - black) * curve.applyAsDouble(share);
            return Math.min(1, Lightness.toLuminance(wished)) * art.white();
        };
    }

    /** The curve from 0..1 to 0..1, both in L* over 100. */
    public DoubleUnaryOperator curve() {
        DoubleUnaryOperator through = through();
        return share -> harder(lighter(through.applyAsDouble(share), middle / 100), StrictMath.pow(2, hardness));
    }

    private DoubleUnaryOperator through() {
        if (points.isEmpty()) {
            return share -> share;
        }
        List<Point> all = new ArrayList<>(points);
        if (all.get(0).from() > 0) {
            all.add(0, new Point(0, 0));
        }
        if (all.get(all.size() - 1).from() < 100) {
            all.add(new Point(100, 100));
        }
        MonotoneCubic cubic = MonotoneCubic.fritschCarlson(
                all.stream().mapToDouble(Point::from).toArray(),
                all.stream().mapToDouble(Point::to).toArray());
        return share -> Math.max(0, Math.min(1, cubic.value(Math.min(100, 100 * share)) / 100));
    }

    /**
     * Schlick C. 1994, Fast Alternatives to Perlin's Bias and Gain Functions, Graphics Gems IV, as Barron J. 2020, arXiv 2010.09714,
     * equation 1, gives it: takes the middle to 1/2 + by.
     */
    static double lighter(double share, double by) {
        return by == 0 ? share : share / ((1 / (0.5 + by) - 2) * (1 - share) + 1);
    }

    /** The same family about the middle: slope {@code contrast} there and its inverse at the ends. */
    static double harder(double share, double contrast) {
        if (contrast == 1) {
            return share;
        }
        double fromMiddle = 2 * share - 1;
        double size = Math.abs(fromMiddle);
        return 0.5 + 0.5 * Math.signum(fromMiddle) * size * contrast / (1 + (contrast - 1) * size);
    }

    /** In a line. */
    public String words() {
        List<String> parts = new ArrayList<>();
        if (!points.isEmpty()) {
            parts.add("through " + points.stream().map(ToneWish::words).collect(Collectors.joining(", ")));
        }
        if (middle != 0) {
            parts.add(String.format(
                    Locale.ROOT,
                    "middle L* %s %s",
                    Refusal.plain(Math.abs(middle)),
                    middle > 0 ? "lighter" : "darker"));
        }
        if (hardness != 0) {
            parts.add(String.format(
                    Locale.ROOT,
                    "%s %% %s",
                    Refusal.plain(Math.abs(100 * hardness)),
                    hardness > 0 ? "harder" : "softer"));
        }
        return String.join(", ", parts);
    }

    /**
     * How much of the art lies past what a print can show, if tones stayed what they are.
     *
     * @param darker share of pixels
     * @param lighter share of pixels
     */
    public record Outside(double darker, double lighter) {}

    /**
     * How much of the art this wish leaves outside a print's range, which the range mapping then fits in.
     *
     * @param greys 65 536 counts of pixels by grey code
     */
    public Outside outside(long[] greys, ArtRange art, PrintRange print) {
        DoubleUnaryOperator wish = changesNothing() ? luminance -> luminance : within(art);
        double all = 0;
        double darker = 0;
        double lighter = 0;
        for (int grey = 0; grey < greys.length; grey++) {
            if (greys[grey] > 0) {
                double lightness =
                        Lightness.ofLuminance(art.relative(wish.applyAsDouble((double) grey / (greys.length - 1))));
                all += greys[grey];
                darker += lightness < print.darkestLightness() ? greys[grey] : 0;
                lighter += lightness > print.paperLightness() ? greys[grey] : 0;
            }
        }
        return new Outside(darker / all, lighter / all);
    }
}
