package greyground.app.check;

import greyground.app.recipe.JobPlate;
import greyground.film.job.Job;
import greyground.plate.FilmPatch;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.raster.Progress;
import greyground.workshop.Figure;
import greyground.workshop.Workshop;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Figures of a workshop that are only assumed and move this job's print most: the virtual plate prints the same field of film, 30 %
 * black, at either end of what each figure may usually be.
 */
public final class AssumedFigures {
    /** More would drown what else is to be said (assumed). */
    private static final int MOST = 3;

    /** Black of a middle tone on the film (assumed): in the workshop as it is assumed it prints L* 49. */
    private static final double MIDDLE_COVERAGE = 0.3;

    /** L* that nobody would miss (assumed). */
    private static final double LEAST_LIGHTNESS = 1;

    /** The figures that docs/virtual-plate.md found to move the print at all; their ends are assumed there, too. */
    private static final List<Reach> REACHES = List.of(
            new Reach("bath.biteMinutes", "the bite of %s min", 10, 30, " min"),
            new Reach("bath.etchFactor", "the etch factor of %s", 1.5, 3, ""),
            new Reach(
                    "filmPrinter.spotGrowthMicrometres",
                    "the film printer's spot growth of %s \u00b5m",
                    0,
                    8,
                    " \u00b5m"),
            new Reach("ink.saturationDensity", "the ink's full black of %s D", 1.4, 1.9, " D"),
            new Reach("exposure.targetStep", "the step wanted, %s,", 5, 9, ""));

    private AssumedFigures() {}

    /** One figure, in words, and between what it may usually lie. */
    private record Reach(String path, String words, double low, double high, String unit) {
        PlateWarning warning(Figure figure, double lightness) {
            return PlateWarning.of(
                    "assumed",
                    String.format(
                            Locale.ROOT,
                            words
                                    + " is only assumed, and between %s and %s%s it moves a middle tone by %.0f L*: measure it",
                            Refusal.plain(figure.value()),
                            Refusal.plain(low),
                            Refusal.plain(high),
                            unit,
                            lightness),
                    path);
        }
    }

    private record Moved(PlateWarning warning, double lightness) {}

    /** At most three, the one that moves the print most first; none of the bath where nothing is bitten. */
    public static List<PlateWarning> of(Workshop workshop, Job job, Progress progress) {
        List<Moved> moved = new ArrayList<>();
        for (Reach reach : REACHES) {
            progress.done((double) REACHES.indexOf(reach) / REACHES.size());
            Figure figure = workshop.figures().get(reach.path());
            boolean idle = job.process() instanceof PlateProcess.UnetchedFilm
                    && reach.path().startsWith("bath.");
            if (figure != null && figure.isAssumed() && !idle) {
                double low = lightness(workshop, job, reach.path(), reach.low());
                progress.done((REACHES.indexOf(reach) + 0.5) / REACHES.size());
                double high = lightness(workshop, job, reach.path(), reach.high());
                double between = Math.abs(low - high);
                moved.add(new Moved(reach.warning(figure, between), between));
            }
        }
        return moved.stream()
                .filter(each -> each.lightness() >= LEAST_LIGHTNESS)
                .sorted(Comparator.comparingDouble(Moved::lightness).reversed())
                .limit(MOST)
                .map(Moved::warning)
                .toList();
    }

    private static double lightness(Workshop workshop, Job job, String path, double value) {
        JobPlate plate = JobPlate.of(workshop.with(path, Figure.assumed(value, "an end of its usual range")), job);
        FilmPatch field = plate.patches().at(MIDDLE_COVERAGE);
        return plate.plate().terms(MIDDLE_COVERAGE, field).lightness();
    }
}
