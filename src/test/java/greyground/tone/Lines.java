package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Parallel lines: a' = a + 2 delta / p, exact until they close or vanish.
 *
 * @param pitchMicrometres distance of neighbouring lines, 1 to 10 000
 */
public record Lines(double pitchMicrometres) implements DotGrowth {
    public Lines {
        Refusal.checkRange("line pitch", pitchMicrometres, 1, 10_000, "um", "20 to 110 lines/cm is usual");
    }

    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        if (coverage <= 0 || coverage >= 1) {
            return coverage <= 0 ? 0 : 1;
        }
        return Math.max(0, Math.min(1, coverage + 2 * edgeShiftMicrometres / pitchMicrometres));
    }

    @Override
    public String name() {
        return "lines, pitch " + Refusal.plain(pitchMicrometres) + " um";
    }
}
