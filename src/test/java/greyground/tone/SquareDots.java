package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Square dots with sides along their rows: p' = ((s + 2 delta) / p)^2 with sharp corners. A true offset rounds the corners of
 * a growing square: (s^2 + 4 s delta + pi delta^2) / p^2 until neighbours meet. Exact at every coverage: the gaps are lines.
 *
 * @param pitchMicrometres distance of neighbouring dots, 1 to 10 000
 * @param roundedCorners whether growth rounds the corners
 */
public record SquareDots(double pitchMicrometres, boolean roundedCorners) implements DotGrowth {
    public SquareDots {
        Refusal.checkRange("dot pitch", pitchMicrometres, 1, 10_000, "um", "20 to 110 lines/cm is usual");
    }

    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        if (coverage <= 0 || coverage >= 1) {
            return coverage <= 0 ? 0 : 1;
        }
        double side = pitchMicrometres * StrictMath.sqrt(coverage);
        double gap = pitchMicrometres - side;
        double cell = pitchMicrometres * pitchMicrometres;
        double wider = side + 2 * edgeShiftMicrometres;
        if (!roundedCorners || edgeShiftMicrometres <= 0) {
            double clipped = Math.max(0, Math.min(pitchMicrometres, wider));
            return clipped * clipped / cell;
        }
        if (wider <= pitchMicrometres) {
            return (side * side
                            + 4 * side * edgeShiftMicrometres
                            + Math.PI * edgeShiftMicrometres * edgeShiftMicrometres)
                    / cell;
        }
        // The straight gaps are closed; what is left open lies between four corner arcs.
        return 1 - gap * gap * (1 - Discs.share(edgeShiftMicrometres, gap)) / cell;
    }

    @Override
    public String name() {
        return "square dots, pitch " + Refusal.plain(pitchMicrometres) + " um";
    }
}
