package greyground.film.compose;

import greyground.art.burnish.LocalTouch;
import greyground.art.burnish.Polyline;
import greyground.film.job.Outlines;
import greyground.quantity.Offset;
import greyground.quantity.Size;
import greyground.tone.ToneCurve;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * How much of a film's picture is left at each place, and what stands there besides: coverage E a + (1 - E) a_out, with E = t² (3 - 2t) and
 * t = d / w + 1/2, d being the distance inside the outline and w the fade's width. Coverages below the lightest tone that holds would come to nothing by
 * chance, so where the fade passes below it the film is clear. All a function of place.
 *
 * @param lie where pixels lie on the plate
 * @param picture its outline's points; empty for none
 * @param fadeMillimetres w
 * @param plate the points of the plate's own shape; empty for a rectangle
 * @param bleedMillimetres how far the picture runs past it
 * @param outside a_out, in 1/65 535
 * @param least the lightest coverage that holds, in 1/65 535
 */
public record Outlined(
        Lie lie,
        List<Offset> picture,
        double fadeMillimetres,
        List<Offset> plate,
        double bleedMillimetres,
        int outside,
        int least) {
    /** All of the picture. */
    public static final int WHOLE = 1 << 16;

    /** Neither picture nor ground: past the plate. */
    public static final int PAST = -1;

    /** Distances are found in so many places over half a fade, and lie straight between. */
    private static final int PLACES = 16;

    /**
     * Where a rectangle of pixels lies on the plate.
     *
     * @param left millimetres from the plate's left edge to the middle of column 0
     * @param top the same, down
     * @param across millimetres from one to the next
     * @param down the same, down
     * @param width of a row
     * @param mirrored whether rows are asked for from right to left
     */
    public record Lie(double left, double top, double across, double down, int width, boolean mirrored) {}

    /** Empty where a job has neither an outline nor a plate of its own shape. */
    public static Optional<Outlined> of(
            Outlines outlines, Size plate, double bleedMillimetres, Lie lie, int outside, int least) {
        if (outlines.plate().isEmpty() && outlines.picture().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Outlined(
                lie,
                outlines.picture()
                        .map(outline -> TornEdge.of(outline.points(plate), outlines.tear()))
                        .orElse(List.of()),
                outlines.fadeMillimetres(),
                outlines.plate().map(outline -> outline.points(plate)).orElse(List.of()),
                bleedMillimetres,
                outlines.black() ? outside : 0,
                least));
    }

    /** The same on a sheet seen from its other side. */
    public Outlined mirrored() {
        return new Outlined(
                new Lie(lie.left, lie.top, lie.across, lie.down, lie.width, !lie.mirrored),
                picture,
                fadeMillimetres,
                plate,
                bleedMillimetres,
                outside,
                least);
    }

    /** The coverage at a place whose picture would have another. */
    public int coverage(int of, int share) {
        if (share == WHOLE || share == PAST) {
            return share == PAST ? 0 : of;
        }
        long sum = (long) share * of + (long) (WHOLE - share) * outside;
        int coverage = (int) ((sum + WHOLE / 2) / WHOLE);
        return coverage < least ? 0 : coverage;
    }

    /** The threshold that the picture's own coverage must pass to be black; below 0 where all is, {@link ToneCurve#SOLID} where none is. */
    int threshold(int threshold, int share) {
        if (share == PAST) {
            return ToneCurve.SOLID;
        }
        long wanted = Math.max(threshold, least - 1);
        if (share == 0) {
            return outside > wanted ? -1 : ToneCurve.SOLID;
        }
        long limit = Math.floorDiv(wanted * WHOLE - (long) (WHOLE - share) * outside, (long) share);
        return (int) Math.max(-1, Math.min(ToneCurve.SOLID, limit));
    }

    /** Mean share of the picture over the plate, and of what lies outside it, looked at in places a two-hundredth of its sides apart. */
    public static double[] means(Outlines outlines, Size plate) {
        int side = 200;
        double across = plate.widthMillimetres() / side;
        double down = plate.heightMillimetres() / side;
        Optional<Outlined> made =
                of(outlines, plate, 0, new Lie(across / 2, down / 2, across, down, side, false), ToneCurve.SOLID, 0);
        if (made.isEmpty()) {
            return new double[] {1, 0};
        }
        Rows rows = made.get().rows();
        double picture = 0;
        double ground = 0;
        for (int y = 0; y < side; y++) {
            for (int share : rows.row(y)) {
                picture += share == PAST ? 0 : (double) share / WHOLE;
                ground += share == PAST ? 0 : 1 - (double) share / WHOLE;
            }
        }
        return new double[] {picture / side / side, ground / side / side};
    }

    /** A maker of rows, for one thread. */
    public Rows rows() {
        return new Rows();
    }

    /** Owned by one thread, since rows are kept from one to the next. */
    public final class Rows {
        private final int[] shares = new int[lie.width];
        private final Distances fade = new Distances(picture, fadeMillimetres / 2);
        private final Distances edge = new Distances(plate, bleedMillimetres);

        /** Shares of the picture in a row, {@link #PAST} to {@link #WHOLE}; good until the next is asked for. */
        public int[] row(int y) {
            if (picture.isEmpty()) {
                Arrays.fill(shares, WHOLE);
            } else {
                double[] inside = fade.row(y);
                for (int x = 0; x < shares.length; x++) {
                    shares[x] = fadeMillimetres == 0
                            ? inside[x] > 0 ? WHOLE : 0
                            : (int) Math.rint(WHOLE * LocalTouch.smooth(inside[x] / fadeMillimetres + 0.5));
                }
            }
            if (!plate.isEmpty()) {
                double[] inside = edge.row(y);
                for (int x = 0; x < shares.length; x++) {
                    shares[x] = inside[x] > -bleedMillimetres ? shares[x] : PAST;
                }
            }
            if (lie.mirrored) {
                for (int i = 0, j = shares.length - 1; i < j; i++, j--) {
                    int share = shares[i];
                    shares[i] = shares[j];
                    shares[j] = share;
                }
            }
            return shares;
        }
    }

    /** Distances inside a closed line, in millimetres, below 0 outside it; held where they pass {@code reach}. */
    private final class Distances {
        private final List<Offset> points;
        private final Polyline line;
        private final double reach;
        /** Rows and columns from one place to the next. */
        private final int step;

        private final double[] found = new double[lie.width];
        private final double[][] places;
        private final int[] rows = {Integer.MIN_VALUE, Integer.MIN_VALUE};

        Distances(List<Offset> points, double most) {
            this.points = points;
            List<Offset> closed = new ArrayList<>(points);
            points.stream().findFirst().ifPresent(closed::add);
            this.line = new Polyline(closed);
            double pitch = Math.max(lie.across, lie.down);
            this.reach = most + 2 * pitch;
            this.step = Math.max(1, (int) (most / pitch / PLACES));
            this.places = new double[2][(lie.width - 1) / step + 2];
        }

        double[] row(int y) {
            int above = Math.floorDiv(y, step);
            double[] upper = place(above);
            if (step == 1) {
                System.arraycopy(upper, 0, found, 0, found.length);
                return found;
            }
            double[] lower = place(above + 1);
            double share = (double) (y - above * step) / step;
            for (int x = 0; x < found.length; x++) {
                int left = x / step;
                double across = (double) (x - left * step) / step;
                double one = upper[left] + across * (upper[left + 1] - upper[left]);
                double other = lower[left] + across * (lower[left + 1] - lower[left]);
                found[x] = one + share * (other - one);
            }
            return found;
        }

        private double[] place(int row) {
            int slot = row & 1;
            if (rows[slot] != row) {
                rows[slot] = row;
                find(lie.top + (double) row * step * lie.down, places[slot]);
            }
            return places[slot];
        }

        private void find(double down, double[] into) {
            double pitch = step * lie.across;
            line.squares(new LocalTouch.Pixels(down, lie.left, pitch, into.length), reach, into);
            double[] crossings = crossings(down);
            int passed = 0;
            for (int x = 0; x < into.length; x++) {
                double across = lie.left + x * pitch;
                while (passed < crossings.length && crossings[passed] <= across) {
                    passed++;
                }
                double far = Math.min(reach, Math.sqrt(into[x]));
                into[x] = (passed & 1) == 1 ? far : -far;
            }
        }

        /** Where a row crosses the line, from left to right. */
        private double[] crossings(double down) {
            double[] all = new double[points.size()];
            int count = 0;
            for (int i = 0; i < points.size(); i++) {
                Offset from = points.get(i);
                Offset to = points.get((i + 1) % points.size());
                if (from.downMillimetres() <= down != to.downMillimetres() <= down) {
                    all[count++] = from.acrossMillimetres()
                            + (down - from.downMillimetres())
                                    / (to.downMillimetres() - from.downMillimetres())
                                    * (to.acrossMillimetres() - from.acrossMillimetres());
                }
            }
            double[] crossings = Arrays.copyOf(all, count);
            Arrays.sort(crossings);
            return crossings;
        }
    }
}
