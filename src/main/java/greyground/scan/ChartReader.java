package greyground.scan;

import greyground.quantity.Refusal;
import greyground.raster.GreyPlane;
import greyground.raster.Progress;
import greyground.wedge.TestPlate;
import java.util.List;

/** Finds a test plate on a scan and measures it. */
public final class ChartReader {
    private ChartReader() {}

    /**
     * Reads.
     *
     * @param scan linear luminance
     * @param expected the plate that should be on it
     * @throws Refusal in a plain sentence if the scan shows anything but one whole print of that plate
     */
    public static ScanReading read(GreyPlane scan, TestPlate expected, ScanChoices choices, Progress progress) {
        if (scan.width() > 0) {
            throw Refusal.failure("reading a scan of " + scan.width() + " x " + scan.height() + " pixels of chart "
                    + expected.id() + " is not there yet");
        }
        return new ScanReading(expected, new PlateOnScan(1, 0, 0, 0, 1, 0, 0, 0), List.of(), List.of(), List.of());
    }
}
