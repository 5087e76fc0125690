package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Square dots that stand on their corners, meet as a checkerboard at 50 % and turn into square holes. With sharp corners the
 * geometry is exact at every coverage: a side s + 2 delta, less the overlaps of neighbouring corners once they have met.
 *
 * @param pitchMicrometres distance of neighbouring dots, 1 to 10 000
 */
public record DiagonalSquares(double pitchMicrometres) implements DotGrowth {
    public DiagonalSquares {
        Refusal.checkRange("dot pitch", pitchMicrometres, 1, 10_000, "um", "20 to 110 lines/cm is usual");
    }

    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        if (coverage <= 0 || coverage >= 1) {
            return coverage <= 0 ? 0 : 1;
        }
        return coverage <= 0.5
                ? squares(coverage, edgeShiftMicrometres)
                : 1 - squares(1 - coverage, -edgeShiftMicrometres);
    }

    private double squares(double coverage, double shift) {
        double pitch = pitchMicrometres;
        double side = Math.max(0, pitch * StrictMath.sqrt(coverage) + 2 * shift);
        double diagonal = side * StrictMath.sqrt(2);
        if (diagonal <= pitch) {
            return side * side / (pitch * pitch);
        }
        if (diagonal >= 2 * pitch) {
            return 1;
        }
        // Each of four corners overlaps a neighbour's in a square whose diagonal is diagonal - pitch; two belong to one
        // cell.
        double overlap = diagonal - pitch;
        return (side * side - overlap * overlap) / (pitch * pitch);
    }

    @Override
    public String name() {
        return "diagonal square dots, pitch " + Refusal.plain(pitchMicrometres) + " um";
    }
}
