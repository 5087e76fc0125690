package greyground.wedge;

import greyground.plate.Bath;
import greyground.plate.Ink;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import java.util.Arrays;

/**
 * A plate in closed form, quick enough for hundreds of fits: random dots of 100 um grown by edge shift and undercut (Boolean
 * overlap), cells as wide as the mean free path of black between lands, wiped as a flat trench, inked after Tollenaar and Ernst
 * and averaged after Yule and Nielsen.
 */
final class SimplePlate {
    private SimplePlate() {}

    static FitModel at(double[] coverages) {
        return new FitModel() {
            @Override
            public double[] lightness(PlateConditions conditions) {
                return Arrays.stream(coverages)
                        .map(coverage -> SimplePlate.lightness(coverage, conditions))
                        .toArray();
            }

            @Override
            public double[] errors(PlateConditions conditions) {
                double[] errors = new double[coverages.length];
                Arrays.fill(errors, LEAST_ERROR);
                return errors;
            }
        };
    }

    private static double lightness(double coverage, PlateConditions conditions) {
        double depth = ((Bath) conditions.wells()).depthMicrometres();
        double shift = FitParameter.EDGE_SHIFT.of(conditions) + depth / FitParameter.ETCH_FACTOR.of(conditions);
        double dot = 100;
        double land = Math.pow(1 - coverage, Math.pow((dot + shift) / dot, 2));
        double width = dot / Math.max(0.01, land);
        double held = coverage == 0 ? 0 : conditions.wipe().trenchFill(width, depth);
        Ink ink = conditions.ink();
        double density = ink.density(ink.transferFraction() * depth * held);
        Paper paper = conditions.paper();
        double root = land * paper.root(0) + (1 - land) * paper.root(density);
        return Paper.lightness(paper.reflectance(root));
    }
}
