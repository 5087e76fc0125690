package greyground.app.teach;

import greyground.fit.MeasuredLevel;
import greyground.fit.MeasuredResponse;
import greyground.plate.VirtualResponse;
import java.util.ArrayList;
import java.util.List;

/**
 * A test plate's tones as lines to be drawn: film coverage, 0 to 1, against the print's L*.
 *
 * @param steps evenly spaced from no black to solid
 * @param levels that were measured
 * @param outliers fields that were left out
 * @param turning past which more black prints paler; 1 where none was seen
 */
public record ResponseLines(List<Step> steps, List<Level> levels, List<Level> outliers, double turning) {
    private static final int STEPS = 200;

    public ResponseLines {
        steps = List.copyOf(steps);
        levels = List.copyOf(levels);
        outliers = List.copyOf(outliers);
    }

    /**
     * All lines at one coverage.
     *
     * @param measured L* as read
     * @param half half the width of its 95 % band
     * @param foretold by the workshop as it was
     * @param taught by the workshop once it is taught
     */
    public record Step(double coverage, double measured, double half, double foretold, double taught) {}

    public record Level(double coverage, double lightness) {}

    static ResponseLines of(MeasuredResponse measured, VirtualResponse foretold, VirtualResponse taught) {
        List<Step> steps = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            double coverage = (double) i / STEPS;
            steps.add(new Step(
                    coverage,
                    measured.lightness(coverage),
                    measured.halfWidth(coverage),
                    foretold.lightness(coverage),
                    taught.lightness(coverage)));
        }
        return new ResponseLines(
                steps,
                levels(measured.levels()),
                measured.outliers().stream()
                        .map(patch -> new Level(patch.coverage(), patch.lightness()))
                        .toList(),
                measured.usable().most());
    }

    static List<Level> levels(List<MeasuredLevel> levels) {
        return levels.stream()
                .map(level -> new Level(level.coverage(), level.lightness()))
                .toList();
    }
}
