package greyground.art.line;

/**
 * The two classes that a drawing's greys fall into, after Otsu N. 1979, IEEE Trans. SMC 9(1) 62-66: those whose means differ most for their numbers.
 * Of his result the means are used: he parts where the larger class's spread ends, an edge runs half way between ink and paper in light.
 *
 * @param ink mean of the darker class, in bins
 * @param paper mean of the lighter class
 * @param last bin of the darker class; the mean of those that do equally well
 * @param separation share of all variance that lies between the classes, 0 to 1; 0 where all is one grey
 */
public record InkAndPaper(double ink, double paper, double last, double separation) {
    /** Art that is parted worse has tones between ink and paper (assumed). */
    public static final double LEAST_SEPARATION = 0.7;

    /**
     * Finds both.
     *
     * @param counts of pixels by grey, the darkest first; at least one pixel
     */
    public static InkAndPaper of(long[] counts) {
        double all = 0;
        double sum = 0;
        for (int grey = 0; grey < counts.length; grey++) {
            all += counts[grey];
            sum += (double) counts[grey] * grey;
        }
        double mean = sum / all;
        double variance = 0;
        for (int grey = 0; grey < counts.length; grey++) {
            variance += counts[grey] * (grey - mean) * (grey - mean);
        }
        double best = 0;
        double lastSum = 0;
        int ties = 0;
        double ink = mean;
        double paper = mean;
        double below = 0;
        double belowSum = 0;
        for (int grey = 0; grey + 1 < counts.length; grey++) {
            below += counts[grey];
            belowSum += (double) counts[grey] * grey;
            if (below == 0 || below == all) {
                continue;
            }
            double dark = belowSum / below;
            double light = (sum - belowSum) / (all - below);
            double between = below * (all - below) / all * (light - dark) * (light - dark);
            if (between > best) {
                best = between;
                lastSum = 0;
                ties = 0;
                ink = dark;
                paper = light;
            }
            if (between == best) {
                lastSum += grey;
                ties++;
            }
        }
        return new InkAndPaper(ink, paper, ties == 0 ? mean : lastSum / ties, variance == 0 ? 0 : best / variance);
    }

    /** Whether there is hardly anything between ink and paper. */
    public boolean apart() {
        return separation >= LEAST_SEPARATION;
    }
}
