package greyground.scan;

import greyground.chart.Area;
import greyground.chart.TestPlate.Strip;
import greyground.fit.MeasuredPatch;
import greyground.scan.ScanReading.TargetReading;
import java.util.ArrayList;
import java.util.List;

/**
 * What one strip of an exposure test printed.
 *
 * @param number from 1, the shortest exposure
 * @param patches its levels' tones, in the layout's order
 * @param targets its line pairs, dots and holes
 * @param opening whether its dots tell the smallest opening
 * @param land whether its holes tell the smallest land
 */
public record StripReading(
        int number,
        List<MeasuredPatch> patches,
        List<TargetReading> targets,
        TargetFindings.Finding opening,
        TargetFindings.Finding land) {
    public StripReading {
        patches = List.copyOf(patches);
        targets = List.copyOf(targets);
    }

    /** The strips of an exposure test, shortest exposure first; none for other plates. */
    public static List<StripReading> of(ScanReading reading) {
        List<StripReading> strips = new ArrayList<>();
        for (Strip strip : reading.plate().strips()) {
            List<MeasuredPatch> patches = reading.patches().stream()
                    .filter(patch -> holds(strip.area(), 1000 * patch.yMillimetres()))
                    .toList();
            List<TargetReading> targets = reading.targets().stream()
                    .filter(one -> holds(strip.area(), one.target().area().middleY()))
                    .toList();
            strips.add(new StripReading(
                    strip.number(),
                    patches,
                    targets,
                    TargetFindings.smallestOpening(targets, patches),
                    TargetFindings.smallestLand(targets)));
        }
        return strips;
    }

    private static boolean holds(Area strip, double yMicrometres) {
        return yMicrometres >= strip.top() && yMicrometres < strip.bottom();
    }
}
