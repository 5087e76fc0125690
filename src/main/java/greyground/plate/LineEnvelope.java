package greyground.plate;

/**
 * The lower envelope of equal parabolas that stand on the samples of one line, in linear time.
 *
 * <p>{@code out[x] = min over q of (f[q] + c (x - q)^2)}, the algorithm of Felzenszwalb and Huttenlocher 2012, Distance
 * Transforms of Sampled Functions, Theory of Computing 8, 415-428. Two changes, neither of which alters the result:
 *
 * <ul>
 *   <li>Where two parabolas cross is never divided out. Parabola b between a and d is hidden when a-b cross no earlier
 *       than b-d, which cross-multiplies to two products. With whole-number samples every term is a whole number below
 *       2^53, so distances are exact.
 *   <li>A wrapped line is unrolled at its least sample m. To the right of m no parabola from m's left can lie below m's own,
 *       because it starts no lower and stands farther away; so one turn, with m at both ends, holds the whole answer.
 * </ul>
 *
 * <p>One thread at a time; the buffers are reused from line to line.
 */
final class LineEnvelope {
    private final int[] sites;
    private final double[] heights;
    private final double[] raised;
    private final float[] turned;

    /**
     * Makes buffers for lines of one length.
     *
     * @param length samples of a line, at least 1
     */
    LineEnvelope(int length) {
        sites = new int[length + 1];
        heights = new double[length + 1];
        raised = new double[length + 1];
        turned = new float[length + 1];
    }

    /**
     * Replaces {@code line[from .. from + length - 1]} by its lower envelope. Infinite samples carry no parabola; a line of
     * nothing else stays as it is.
     *
     * @param steepness c, above 0, in sample units per squared pixel
     */
    void lower(float[] line, int from, int length, double steepness, Rim rim) {
        if (rim == Rim.BOUNDED) {
            replace(line, from, length, steepness);
            return;
        }
        int least = 0;
        for (int x = 1; x < length; x++) {
            if (line[from + x] < line[from + least]) {
                least = x;
            }
        }
        System.arraycopy(line, from + least, turned, 0, length - least);
        System.arraycopy(line, from, turned, length - least, least);
        turned[length] = turned[0];
        replace(turned, 0, length + 1, steepness);
        System.arraycopy(turned, 0, line, from + least, length - least);
        System.arraycopy(turned, length - least, line, from, least);
    }

    private void replace(float[] line, int from, int length, double steepness) {
        double scale = 1 / steepness;
        int last = -1;
        for (int q = 0; q < length; q++) {
            float sample = line[from + q];
            if (sample == Float.POSITIVE_INFINITY) {
                continue;
            }
            double height = sample * scale;
            double lift = height + (double) q * q;
            while (last > 0 && hides(last, q, lift)) {
                last--;
            }
            last++;
            sites[last] = q;
            heights[last] = height;
            raised[last] = lift;
        }
        if (last < 0) {
            return;
        }
        int at = 0;
        for (int x = 0; x < length; x++) {
            double value = value(at, x);
            while (at < last) {
                double next = value(at + 1, x);
                if (next > value) {
                    break;
                }
                value = next;
                at++;
            }
            line[from + x] = (float) (value * steepness);
        }
    }

    private boolean hides(int middle, int q, double lift) {
        double leftRun = sites[middle] - sites[middle - 1];
        double rightRun = q - sites[middle];
        return (lift - raised[middle]) * leftRun <= (raised[middle] - raised[middle - 1]) * rightRun;
    }

    private double value(int parabola, int x) {
        double away = x - sites[parabola];
        return heights[parabola] + away * away;
    }
}
