package greyground.tone;

import greyground.quantity.Refusal;

/**
 * Round halftone dots that grow by their edge, and above half coverage round holes that shrink by theirs. Exact geometry for
 * dots up to 50 % and holes from pi/4 on, a straight bridge between.
 *
 * @param pitchMicrometres distance of neighbouring dots, 1 to 10 000
 */
public record RoundDots(double pitchMicrometres) implements DotGrowth {
    public RoundDots {
        Refusal.checkRange("dot pitch", pitchMicrometres, 1, 10_000, "um", "20 to 110 lines/cm is usual");
    }

    @Override
    public double grown(double coverage, double edgeShiftMicrometres) {
        return Discs.bridged(coverage, a -> disc(a, edgeShiftMicrometres), a -> 1 - disc(1 - a, -edgeShiftMicrometres));
    }

    private double disc(double coverage, double shift) {
        return Discs.share(Discs.radius(coverage, pitchMicrometres) + shift, pitchMicrometres);
    }

    @Override
    public String name() {
        return "round dots, pitch " + Refusal.plain(pitchMicrometres) + " um";
    }
}
