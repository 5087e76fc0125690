package greyground.plate.edge;

/**
 * The lower envelope of equal parabolas that stand on points of one line, in linear time.
 *
 * <p>{@code out[x] = min over sites s of (height_s + (x - place_s)^2)}, the algorithm of Felzenszwalb and Huttenlocher 2012,
 * Distance Transforms of Sampled Functions, Theory of Computing 8, 415-428. Two changes, neither of which alters the result:
 *
 * <ul>
 *   <li>Where two parabolas cross is never divided out. Parabola b between a and d is hidden when a and b cross no earlier
 *       than b and d, which cross-multiplies to two products. With whole places and heights every term is a whole number
 *       below 2^53, so distances are exact.
 *   <li>A wrapped line is unrolled at its least sample m. To the right of m no parabola from m's left can lie below m's own,
 *       because it starts no lower and stands farther away; so one turn, with m at both ends, holds the whole answer.
 * </ul>
 *
 * <p>One thread at a time; the buffers are reused from line to line.
 */
public final class LineEnvelope {
    private final double[] places;
    private final double[] lifts;
    private final float[] turned;
    private int count;
    private boolean level;

    /**
     * Makes buffers for lines of one length.
     *
     * @param length samples of a line, at least 1; twice as many sites may stand on it
     */
    public LineEnvelope(int length) {
        places = new double[2 * length + 2];
        lifts = new double[2 * length + 2];
        turned = new float[length + 1];
    }

    /**
     * Replaces {@code line[from .. from + length - 1]} by its lower envelope. Infinite samples carry no parabola; a line of
     * nothing else stays as it is.
     *
     * @param steepness c of {@code c x^2}, above 0, in sample units per squared pixel
     */
    void lower(float[] line, int from, int length, double steepness, Rim rim) {
        if (rim == Rim.BOUNDED) {
            replace(line, from, length, steepness);
            return;
        }
        int least = least(line, from, length);
        System.arraycopy(line, from + least, turned, 0, length - least);
        System.arraycopy(line, from, turned, length - least, least);
        turned[length] = turned[0];
        replace(turned, 0, length + 1, steepness);
        System.arraycopy(turned, 0, line, from + least, length - least);
        System.arraycopy(turned, length - least, line, from, least);
    }

    /** Place of the first least sample, where a wrapped line may be unrolled. */
    static int least(float[] line, int from, int length) {
        int least = 0;
        for (int x = 1; x < length; x++) {
            if (line[from + x] < line[from + least]) {
                least = x;
            }
        }
        return least;
    }

    private void replace(float[] line, int from, int length, double steepness) {
        double scale = 1 / steepness;
        clear();
        for (int q = 0; q < length; q++) {
            float sample = line[from + q];
            if (sample != Float.POSITIVE_INFINITY) {
                add(q, sample * scale);
            }
        }
        fill(line, from, length, steepness);
    }

    /** Forgets all sites. */
    public void clear() {
        count = 0;
        level = true;
    }

    /**
     * Stands a unit parabola on the line.
     *
     * @param place in pixels, above every place added before
     * @param height of its foot, in squared pixels, finite
     */
    public void add(double place, double height) {
        places[count] = place;
        lifts[count] = height + place * place;
        level &= height == 0;
        count++;
    }

    /**
     * Writes the envelope at the places 0 to {@code length - 1}, times {@code steepness}; nothing if there are no sites.
     * The sites are used up.
     */
    public void fill(float[] line, int from, int length, double steepness) {
        if (count > 0) {
            // Parabolas that all stand on zero, as in the rows of a distance transform, never hide one another.
            write(line, from, length, steepness, level ? count - 1 : lowest());
        }
    }

    /** Packs the sites that show in the envelope to the front and returns the index of the last of them. */
    private int lowest() {
        double[] place = places;
        double[] lift = lifts;
        int sites = count;
        int last = 0;
        for (int q = 1; q < sites; q++) {
            double newPlace = place[q];
            double newLift = lift[q];
            while (last > 0
                    && (newLift - lift[last]) * (place[last] - place[last - 1])
                            <= (lift[last] - lift[last - 1]) * (newPlace - place[last])) {
                last--;
            }
            last++;
            place[last] = newPlace;
            lift[last] = newLift;
        }
        return last;
    }

    /** A parabola's height at x is x^2 + lift - 2 x place: less x^2, which all share, a straight line. */
    private void write(float[] line, int from, int length, double steepness, int last) {
        double[] place = places;
        double[] lift = lifts;
        int at = 0;
        double atPlace = place[0];
        double atLift = lift[0];
        double nextPlace = place[1];
        double nextLift = last > 0 ? lift[1] : Double.POSITIVE_INFINITY;
        for (int x = 0; x < length; x++) {
            double twice = 2.0 * x;
            double value = atLift - twice * atPlace;
            double next = nextLift - twice * nextPlace;
            while (next <= value) {
                at++;
                value = next;
                atPlace = nextPlace;
                atLift = nextLift;
                nextPlace = place[at + 1];
                nextLift = at < last ? lift[at + 1] : Double.POSITIVE_INFINITY;
                next = nextLift - twice * nextPlace;
            }
            line[from + x] = (float) ((value + (double) x * x) * steepness);
        }
    }
}
