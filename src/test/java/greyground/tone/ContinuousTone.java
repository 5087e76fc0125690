package greyground.tone;

/**
 * A film without dots: a sample is a share of the film's density range and there are no edges to move, so what the film says
 * is what reaches the paper until the plate is measured (assumed).
 */
public record ContinuousTone() implements DotGrowth {
    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        return Math.max(0, Math.min(1, coverage));
    }

    @Override
    public String name() {
        return "continuous tone";
    }
}
