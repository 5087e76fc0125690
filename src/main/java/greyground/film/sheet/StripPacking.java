package greyground.film.sheet;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Rectangles laid into a strip of given width, so that they take little of its length (strip packing).
 *
 * <p>Each next one goes to the lowest place of the skyline that those before it make, beside the higher of that place's walls: best fit, after
 * Burke, Kendall &amp; Whitwell 2004, Operations Research 52, 655-671 (from memory). Orders by size are tried, and then the best of them with
 * two rectangles exchanged or one turned, as long as that does no harm (hill climbing). Chance is seeded: the same rectangles lie the same way
 * on every machine.
 */
public final class StripPacking {
    /** Rectangles held against a gap, in all: some tenths of a second (assumed). */
    private static final long MOST_LOOKS = 20_000_000;

    private final List<Piece> pieces;
    private final int width;
    private final int least;
    private long looks;

    private StripPacking(List<Piece> pieces, int width) {
        this.pieces = pieces;
        this.width = width;
        long area = 0;
        int highest = 0;
        for (Piece piece : pieces) {
            area += (long) piece.width * piece.height;
            highest = Math.max(highest, piece.leastHeight(width));
        }
        this.least = (int) Math.max(highest, (area + width - 1) / width);
    }

    /**
     * A rectangle.
     *
     * @param width at least 1
     * @param height at least 1
     * @param mayTurn whether it may lie turned by a quarter
     */
    public record Piece(int width, int height, boolean mayTurn) {
        public Piece {
            if (width < 1 || height < 1) {
                throw Refusal.use("a rectangle measures " + width + " x " + height + "; each side must be 1 or more");
            }
        }

        /** Whether it can lie in a strip of this width. */
        public boolean goesInto(int strip) {
            return width <= strip || (mayTurn && height <= strip);
        }

        private int leastHeight(int strip) {
            return mayTurn && height <= strip && (width > strip || width < height) ? width : height;
        }
    }

    /** Where a rectangle's top left corner lies, and whether the rectangle lies turned. */
    public record Place(int x, int y, boolean turned) {}

    /**
     * All of them.
     *
     * @param places in the order in which the rectangles were given
     * @param height of the strip that they take
     */
    public record Packed(List<Place> places, int height) {
        public Packed {
            places = List.copyOf(places);
        }
    }

    /** Packs rectangles, one or more, each of which goes into a strip of this width. */
    public static Packed pack(List<Piece> pieces, int width) {
        for (Piece piece : pieces) {
            if (!piece.goesInto(width)) {
                throw Refusal.use("a rectangle of " + piece.width + " x " + piece.height
                        + " does not go into a strip of " + width + ": make the strip wider");
            }
        }
        return new StripPacking(List.copyOf(pieces), width).best();
    }

    /** Which rectangle a gap takes. */
    private enum Choice {
        /** The first in order that goes into it. */
        FIRST,
        /** The first in order that fills its width, else the first that goes into it. */
        FILLING,
        /** The widest that goes into it. */
        WIDEST
    }

    private Packed best() {
        List<Comparator<Piece>> sizes = List.of(
                Comparator.comparingLong(piece -> -(long) piece.width * piece.height),
                Comparator.comparingInt(piece -> -Math.max(piece.width, piece.height)),
                Comparator.comparingInt(piece -> -piece.width),
                Comparator.comparingInt(piece -> -piece.height));
        List<Trial> trials = new ArrayList<>();
        for (Comparator<Piece> size : sizes) {
            int[] order = IntStream.range(0, pieces.size())
                    .boxed()
                    .sorted(Comparator.comparing(pieces::get, size))
                    .mapToInt(Integer::intValue)
                    .toArray();
            for (boolean lying : new boolean[] {true, false}) {
                for (Choice choice : Choice.values()) {
                    Trial trial = new Trial(order.clone(), turned(lying), choice);
                    trial.run();
                    trials.add(trial);
                }
            }
        }
        Trial best = trials.get(0);
        for (Trial trial : trials) {
            best = trial.isBetterThan(best) ? trial : best;
        }
        return climbed(best).packed();
    }

    private boolean[] turned(boolean lying) {
        boolean[] turned = new boolean[pieces.size()];
        for (int i = 0; i < turned.length; i++) {
            Piece piece = pieces.get(i);
            turned[i] = piece.mayTurn && (lying ? piece.height > piece.width : piece.width > piece.height);
        }
        return turned;
    }

    private Trial climbed(Trial start) {
        Trial best = start;
        SplittableRandom chance = new SplittableRandom(1);
        Choice[] choices = Choice.values();
        while (best.height > least && looks < MOST_LOOKS && pieces.size() > 1) {
            Trial next = new Trial(best.order.clone(), best.turned.clone(), best.choice);
            int times = 1 + chance.nextInt(3);
            for (int i = 0; i < times; i++) {
                next.change(chance.nextInt(pieces.size()), chance.nextInt(pieces.size()));
            }
            if (chance.nextInt(16) == 0) {
                next.choice = choices[chance.nextInt(choices.length)];
            }
            next.run();
            if (!best.isBetterThan(next)) {
                best = next;
            }
        }
        return best;
    }

    /** One way of laying them. */
    private final class Trial {
        private final int[] order;
        private final boolean[] turned;
        private Choice choice;
        private final Place[] places;
        private final int[] x;
        private final int[] y;
        private int steps;
        private int height;
        /** The skyline's heights squared and added up: a tower is worse than a ragged edge. */
        private double unevenness;

        Trial(int[] order, boolean[] turned, Choice choice) {
            this.order = order;
            this.turned = turned;
            this.choice = choice;
            this.places = new Place[order.length];
            this.x = new int[order.length + 2];
            this.y = new int[order.length + 2];
        }

        void change(int one, int other) {
            if (one == other && pieces.get(order[one]).mayTurn) {
                turned[order[one]] ^= true;
            }
            int kept = order[one];
            order[one] = order[other];
            order[other] = kept;
        }

        boolean isBetterThan(Trial other) {
            return height < other.height || (height == other.height && unevenness < other.unevenness);
        }

        Packed packed() {
            return new Packed(List.of(places), height);
        }

        void run() {
            int[] left = order.clone();
            int count = left.length;
            steps = 1;
            x[0] = 0;
            x[1] = width;
            y[0] = 0;
            while (count > 0) {
                int low = lowest();
                int at = chosen(left, count, x[low + 1] - x[low]);
                if (at < 0) {
                    fill(low);
                    continue;
                }
                int index = left[at];
                System.arraycopy(left, at + 1, left, at, --count - at);
                lay(index, low);
            }
            height = 0;
            for (int i = 0; i < steps; i++) {
                height = Math.max(height, y[i]);
            }
            unevenness = 0;
            for (int i = 0; i < steps; i++) {
                unevenness += (double) y[i] * y[i] * (x[i + 1] - x[i]);
            }
        }

        private int lowest() {
            int low = 0;
            for (int i = 1; i < steps; i++) {
                low = y[i] < y[low] ? i : low;
            }
            return low;
        }

        /** A place in {@code left} of what goes into the gap, or -1; turns it if only so it goes. */
        private int chosen(int[] left, int count, int gap) {
            int found = -1;
            int widest = 0;
            looks += count;
            for (int i = 0; i < count; i++) {
                int index = left[i];
                Piece piece = pieces.get(index);
                int across = turned[index] ? piece.height : piece.width;
                if (piece.mayTurn && across != gap) {
                    int other = turned[index] ? piece.width : piece.height;
                    boolean better = (other == gap && choice != Choice.FIRST)
                            || (across > gap && other <= gap)
                            || (choice == Choice.WIDEST && other <= gap && other > across);
                    if (better) {
                        turned[index] ^= true;
                        across = other;
                    }
                }
                if (across > gap) {
                    continue;
                }
                if (choice == Choice.FIRST || across == gap) {
                    return i;
                }
                if (found < 0 || (choice == Choice.WIDEST && across > widest)) {
                    found = i;
                    widest = across;
                }
            }
            return found;
        }

        private void lay(int index, int low) {
            Piece piece = pieces.get(index);
            int across = turned[index] ? piece.height : piece.width;
            int down = turned[index] ? piece.width : piece.height;
            int gap = x[low + 1] - x[low];
            int before = low == 0 ? Integer.MAX_VALUE : y[low - 1];
            int after = low == steps - 1 ? Integer.MAX_VALUE : y[low + 1];
            boolean atLeft = before >= after;
            places[index] = new Place(atLeft ? x[low] : x[low + 1] - across, y[low], turned[index]);
            int top = y[low] + down;
            if (across == gap) {
                y[low] = top;
            } else {
                System.arraycopy(x, low + 1, x, low + 2, steps - low);
                System.arraycopy(y, low + 1, y, low + 2, steps - low - 1);
                steps++;
                if (atLeft) {
                    x[low + 1] = x[low] + across;
                    y[low + 1] = y[low];
                    y[low] = top;
                } else {
                    x[low + 1] = x[low + 2] - across;
                    y[low + 1] = top;
                }
            }
            merge();
        }

        /** Nothing goes into the lowest gap: it is given up as far as its lower wall. */
        private void fill(int low) {
            int before = low == 0 ? Integer.MAX_VALUE : y[low - 1];
            int after = low == steps - 1 ? Integer.MAX_VALUE : y[low + 1];
            y[low] = Math.min(before, after);
            merge();
        }

        private void merge() {
            int kept = 0;
            for (int i = 1; i < steps; i++) {
                if (y[i] != y[kept]) {
                    kept++;
                    x[kept] = x[i];
                    y[kept] = y[i];
                }
            }
            x[kept + 1] = width;
            steps = kept + 1;
        }
    }
}
