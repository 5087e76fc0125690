package greyground.art.burnish;

import greyground.quantity.Offset;
import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;
import java.util.List;

/**
 * One place of the plate made lighter or darker by hand. Its mask goes from 0 to 1 by the smooth step t² (3 - 2 t), t = d / w + 1/2, where d is the
 * distance inside its edge and w its feather; places and lengths are millimetres of plate, from its top left as the print reads.
 */
public sealed interface LocalTouch {
    /** Strengths (assumed: more is another picture). */
    Range LIGHTNESS = new Range(-30, 30, Unit.LIGHTNESS, "give 0 to 30 L*; 5 is clearly seen");

    /** A plate's longest side, and as much on either side of it. */
    Range PLACE =
            new Range(-3000, 6000, Unit.MILLIMETRES, "places count from the plate's top left, as the print reads");

    Range WIDTH = new Range(0.1, 3000, Unit.MILLIMETRES, "a brush of 2 to 20 mm is usual");

    Range FEATHER = new Range(0.1, 3000, Unit.MILLIMETRES, "half the width or more is soft");

    /** Beyond these turns are repeated. */
    Range TURN = new Range(-360, 360, Unit.DEGREES, "clockwise");

    /** Points of a stroke (assumed). */
    int MOST_POINTS = 100_000;

    /** What is added within, in L* of the art: above 0 burnished, below 0 deepened. */
    double lightness();

    /** Width over which the mask goes from 0 to 1. */
    double featherMillimetres();

    /** First and last millimetre down the plate that it may reach; may be endless. */
    double[] down();

    /** First and last millimetre across the plate that it may reach in a row; the first beyond the last where it reaches none. */
    double[] across(double downMillimetres);

    /** Masks, 0 to 1, of the pixels of a row. */
    void masks(Pixels row, double[] into);

    /** A place on its edge's line, of {@code count}, for what the art does there. */
    List<Offset> edge(int count);

    /**
     * Pixels of a row.
     *
     * @param downMillimetres of their middles
     * @param acrossMillimetres of the first one's middle
     * @param pitchMillimetres from one to the next
     * @param count how many
     */
    record Pixels(double downMillimetres, double acrossMillimetres, double pitchMillimetres, int count) {}

    /** t² (3 - 2 t), from 0 at t = 0 and below to 1 at t = 1 and above. */
    static double smooth(double t) {
        double held = Math.max(0, Math.min(1, t));
        return held * held * (3 - 2 * held);
    }

    /**
     * How far tones of the art may change places across the edge: |D| (1 - g w / (1.5 |D|))^1.5, in L*, where the art rises by g against a touch of
     * strength D and feather w; 0 where it rises faster than the feather falls.
     *
     * @param slope of the art, in L* to the millimetre, 0 or more
     */
    static double reversal(double lightness, double featherMillimetres, double slope) {
        double strength = Math.abs(lightness);
        double share = slope * featherMillimetres / (1.5 * strength);
        return strength == 0 || share >= 1 ? 0 : strength * StrictMath.pow(1 - share, 1.5);
    }

    private static void check(double lightness, double feather) {
        LIGHTNESS.check("touch", lightness);
        FEATHER.check("feather", feather);
    }

    private static Offset onPlate(String what, Offset place) {
        PLACE.check(what, place.acrossMillimetres());
        PLACE.check(what, place.downMillimetres());
        return place;
    }

    /**
     * A brush drawn along points; where it crosses itself it counts once.
     *
     * @param lightness in L*
     * @param widthMillimetres of the brush, to the middle of its feather
     * @param featherMillimetres of its edge
     * @param points one or more, joined straight
     */
    record Stroke(double lightness, double widthMillimetres, double featherMillimetres, List<Offset> points)
            implements LocalTouch {
        public Stroke {
            check(lightness, featherMillimetres);
            WIDTH.check("stroke width", widthMillimetres);
            points = List.copyOf(points);
            if (points.isEmpty() || points.size() > MOST_POINTS) {
                throw Refusal.use("a stroke has " + points.size() + " points; it must have 1 to " + MOST_POINTS
                        + ": split it or leave it out");
            }
            points.forEach(point -> onPlate("stroke's point", point));
        }

        private double reach() {
            return (widthMillimetres + featherMillimetres) / 2;
        }

        private Polyline line() {
            return new Polyline(points);
        }

        @Override
        public double[] down() {
            return line().down(reach());
        }

        @Override
        public double[] across(double downMillimetres) {
            return line().across(downMillimetres, reach());
        }

        @Override
        public void masks(Pixels row, double[] into) {
            line().squares(row, reach(), into);
            for (int x = 0; x < row.count(); x++) {
                into[x] = into[x] == Double.POSITIVE_INFINITY
                        ? 0
                        : smooth((widthMillimetres / 2 - Math.sqrt(into[x])) / featherMillimetres + 0.5);
            }
        }

        @Override
        public List<Offset> edge(int count) {
            return line().beside(widthMillimetres / 2, count);
        }
    }

    /**
     * An ellipse.
     *
     * @param lightness in L*
     * @param centre of it
     * @param acrossMillimetres its radius across, before it is turned
     * @param downMillimetres its radius down
     * @param turnDegrees clockwise
     * @param featherMillimetres of its edge
     */
    record Ellipse(
            double lightness,
            Offset centre,
            double acrossMillimetres,
            double downMillimetres,
            double turnDegrees,
            double featherMillimetres)
            implements LocalTouch {
        public Ellipse {
            check(lightness, featherMillimetres);
            WIDTH.check("ellipse's radius across", acrossMillimetres);
            WIDTH.check("ellipse's radius down", downMillimetres);
            TURN.check("ellipse's turn", turnDegrees);
            onPlate("ellipse's centre", centre);
        }

        private double reach() {
            return Math.max(acrossMillimetres, downMillimetres) + featherMillimetres / 2;
        }

        @Override
        public double[] down() {
            return new double[] {centre.downMillimetres() - reach(), centre.downMillimetres() + reach()};
        }

        @Override
        public double[] across(double downMillimetres) {
            return new double[] {centre.acrossMillimetres() - reach(), centre.acrossMillimetres() + reach()};
        }

        @Override
        public void masks(Pixels row, double[] into) {
            EllipseDistance distance = new EllipseDistance(this.acrossMillimetres, this.downMillimetres);
            double turn = StrictMath.toRadians(turnDegrees);
            double cos = StrictMath.cos(turn);
            double sin = StrictMath.sin(turn);
            double y = row.downMillimetres() - centre.downMillimetres();
            for (int i = 0; i < row.count(); i++) {
                double x = row.acrossMillimetres() + i * row.pitchMillimetres() - centre.acrossMillimetres();
                double inside = distance.inside(x * cos + y * sin, y * cos - x * sin, featherMillimetres / 2);
                into[i] = smooth(inside / featherMillimetres + 0.5);
            }
        }

        @Override
        public List<Offset> edge(int count) {
            double turn = StrictMath.toRadians(turnDegrees);
            return java.util.stream.IntStream.range(0, count)
                    .mapToObj(i -> {
                        double angle = 2 * StrictMath.PI * i / count;
                        double x = acrossMillimetres * StrictMath.cos(angle);
                        double y = downMillimetres * StrictMath.sin(angle);
                        return new Offset(
                                centre.acrossMillimetres() + x * StrictMath.cos(turn) - y * StrictMath.sin(turn),
                                centre.downMillimetres() + x * StrictMath.sin(turn) + y * StrictMath.cos(turn));
                    })
                    .toList();
        }
    }

    /**
     * A slope from nothing at one place to its strength at another and beyond.
     *
     * @param lightness in L*
     * @param from where it begins
     * @param to where it is whole; not the same place
     */
    record Gradient(double lightness, Offset from, Offset to) implements LocalTouch {
        public Gradient {
            onPlate("gradient's beginning", from);
            onPlate("gradient's end", to);
            check(lightness, length(from, to));
        }

        private static double length(Offset from, Offset to) {
            double across = to.acrossMillimetres() - from.acrossMillimetres();
            double down = to.downMillimetres() - from.downMillimetres();
            return Math.sqrt(across * across + down * down);
        }

        @Override
        public double featherMillimetres() {
            return length(from, to);
        }

        @Override
        public double[] down() {
            return new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY};
        }

        @Override
        public double[] across(double downMillimetres) {
            return down();
        }

        @Override
        public void masks(Pixels row, double[] into) {
            double across = to.acrossMillimetres() - from.acrossMillimetres();
            double down = to.downMillimetres() - from.downMillimetres();
            double square = across * across + down * down;
            double y = (row.downMillimetres() - from.downMillimetres()) * down;
            for (int i = 0; i < row.count(); i++) {
                double x = row.acrossMillimetres() + i * row.pitchMillimetres() - from.acrossMillimetres();
                into[i] = smooth((x * across + y) / square);
            }
        }

        @Override
        public List<Offset> edge(int count) {
            return List.of(new Offset(
                    (from.acrossMillimetres() + to.acrossMillimetres()) / 2,
                    (from.downMillimetres() + to.downMillimetres()) / 2));
        }
    }
}
