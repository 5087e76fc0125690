package greyground.bench;

import greyground.simulation.CalibrationReport;

/**
 * Prints how well scans of simulated test plates are read and what is learnt from them, as the tables of docs/calibration.md.
 *
 * <p>Arguments: {@code read CASES FIRST-SEED} or {@code learn CASES FIRST-SEED}.
 */
public final class CalibrationStudy {
    private CalibrationStudy() {}

    /** Runs it. */
    public static void main(String[] arguments) throws Exception {
        int cases = Integer.parseInt(arguments[1]);
        long first = Long.parseLong(arguments[2]);
        if (arguments[0].equals("read")) {
            CalibrationReport.read(cases, first);
        } else {
            CalibrationReport.learn(cases, first);
        }
    }
}
