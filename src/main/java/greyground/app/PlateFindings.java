package greyground.app;

import greyground.scan.TargetReading;
import greyground.wedge.MeasuredPatch;
import java.util.List;

/**
 * What was read of a test plate's print, however it was read.
 *
 * @param how in a few words, such as "scan of 300 pixels per inch"
 * @param patches of the wedge
 * @param targets that have a tone; none where values were typed in
 * @param notes what a person should know, one sentence each
 */
record PlateFindings(String how, List<MeasuredPatch> patches, List<TargetReading> targets, List<String> notes) {
    PlateFindings {
        patches = List.copyOf(patches);
        targets = List.copyOf(targets);
        notes = List.copyOf(notes);
    }
}
