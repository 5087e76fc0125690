package greyground.bench;

import greyground.simulation.CalibrationReport;
import greyground.simulation.ForeignReport;

/**
 * Prints how well scans of simulated test plates are read and what is learnt from them, as the tables of docs/calibration.md.
 *
 * <p>Arguments: what is studied ({@code read}, {@code print}, {@code learn}, {@code foreign}, {@code foreignScan}, {@code
 * foreignLearn}, {@code foreignScanLearn}), number of cases, first seed.
 */
public final class CalibrationStudy {
    private CalibrationStudy() {}

    /** Runs it. */
    public static void main(String[] arguments) throws Exception {
        int cases = Integer.parseInt(arguments[1]);
        long first = Long.parseLong(arguments[2]);
        switch (arguments[0]) {
            case "read" -> CalibrationReport.read(cases, first);
            case "foreign" -> ForeignReport.bands(cases, first, false);
            case "foreignScan" -> ForeignReport.bands(cases, first, true);
            case "foreignLearn" -> ForeignReport.lessons(cases, first, false);
            case "foreignScanLearn" -> ForeignReport.lessons(cases, first, true);
            case "print" -> CalibrationReport.print(cases, first);
            default -> CalibrationReport.learn(cases, first);
        }
    }
}
