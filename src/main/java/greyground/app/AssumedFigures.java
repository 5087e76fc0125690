package greyground.app;

import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Figures of a workshop that move the print most and are only assumed. How far each moves the same film's tone at 30 % black over its
 * usual range is the table of docs/virtual-plate.md, which bench.PlateSensitivity computes for a grain of 180 um.
 */
final class AssumedFigures {
    /** More would drown what else is to be said (assumed). */
    private static final int MOST = 3;

    private static final List<Reach> REACHES = List.of(
            new Reach("bath.biteMinutes", "the bite of %s min", "between 10 and 30 min", 27),
            new Reach("bath.etchFactor", "depth over creep of %s", "between 1.5 and 3", 15),
            new Reach(
                    "filmPrinter.spotGrowthMicrometres",
                    "the film printer's spot growth of %s um",
                    "between 0 and 8 um",
                    12),
            new Reach("ink.saturationDensity", "the ink's full black of %s D", "between 1.4 and 1.9 D", 6),
            new Reach("exposure.targetStep", "the step wanted, %s", "between 5 and 9", 4));

    private AssumedFigures() {}

    /**
     * How far one figure moves the print.
     *
     * @param lightness L* between the ends of its range
     */
    private record Reach(String path, String words, String range, int lightness) {
        PlateWarning warning(Figure figure) {
            return PlateWarning.of(
                    "assumed",
                    String.format(
                            Locale.ROOT,
                            words + " is only assumed, and %s it moves a middle tone by %d L*: measure it",
                            Refusal.plain(figure.value()),
                            range,
                            lightness),
                    path);
        }
    }

    /** At most three, the one that moves the print most first; none of the bath where nothing is bitten. */
    static List<PlateWarning> of(Workshop workshop, PlateProcess process) {
        List<PlateWarning> warnings = new ArrayList<>();
        for (Reach reach : REACHES) {
            Figure figure = workshop.figures().get(reach.path());
            boolean idle =
                    process instanceof PlateProcess.UnetchedFilm && reach.path().startsWith("bath.");
            if (figure != null && figure.isAssumed() && !idle && warnings.size() < MOST) {
                warnings.add(reach.warning(figure));
            }
        }
        return warnings;
    }
}
