package greyground.app.teach;

import greyground.fit.MeasuredPatch;
import greyground.fit.SharedErrors;
import greyground.picture.Picture;
import greyground.scan.ScanReading;
import greyground.scan.ScanReading.TargetReading;
import java.util.List;
import java.util.Optional;

/**
 * What was read of a test plate's print, however it was read.
 *
 * @param how in a few words, such as "scan of 300 pixels per inch"
 * @param toneScale what joins codes to light
 * @param patches of the wedge
 * @param scan the reading of the scan; empty where values were typed in
 * @param overlay the scan with what was measured drawn over it, where that is wanted
 * @param notes what a person should know, one sentence each
 */
record PlateFindings(
        String how,
        SharedErrors.ToneScale toneScale,
        List<MeasuredPatch> patches,
        Optional<ScanReading> scan,
        Optional<Picture> overlay,
        List<String> notes) {
    List<TargetReading> targets() {
        return scan.map(ScanReading::targets).orElse(List.of());
    }

    PlateFindings {
        patches = List.copyOf(patches);
        notes = List.copyOf(notes);
    }
}
