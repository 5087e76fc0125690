package greyground.scan;

import greyground.chart.Target;
import greyground.chart.TestPlate;
import greyground.fit.MeasuredPatch;
import java.util.List;
import java.util.Optional;

/**
 * What a scan of a test plate's print said.
 *
 * @param plate whose layout it is
 * @param place where the plate lies on the scan
 * @param patches one for each field that could be measured, in the layout's order
 * @param targets mean lightness over each target that has an even tone or lines, in the layout's order
 * @param paper squares of bare paper that were taken for white; none where clear fields stood for it
 * @param glare stray light as the plate itself shows it; empty where somebody told it, or the plate has no darks
 * @param notes what a person should know, one sentence each: mirrored, uneven light, fields left out
 */
public record ScanReading(
        TestPlate plate,
        Projective place,
        List<MeasuredPatch> patches,
        List<TargetReading> targets,
        List<PaperWhite.Square> paper,
        Optional<Glare> glare,
        List<String> notes) {
    /**
     * The tone over one target.
     *
     * @param target of the layout
     * @param lightness mean CIE L*, absolute, 0 to 100
     */
    public record TargetReading(Target target, double lightness) {}

    public ScanReading {
        patches = List.copyOf(patches);
        targets = List.copyOf(targets);
        paper = List.copyOf(paper);
        notes = List.copyOf(notes);
    }
}
