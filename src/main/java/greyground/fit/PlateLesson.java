package greyground.fit;

import greyground.chart.LinePatch;
import greyground.plate.Bath;
import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * What one test plate teaches about the workshop's numbers: all that shape a tone are looked for together, each held by what the
 * workshop believes of it (its own value, and a spread that is assumed), so that a number is claimed only as far as this plate tells
 * more than that.
 *
 * <p>It is the most likely plate (maximum a posteriori, Gaussian errors and beliefs; Tarantola 2005, ch. 3, from memory): tones, lines
 * and direct readings are weighted by their errors and the model's own, and the covariance is {@code (J' J + B^-1)^-1}, never
 * narrowed for a good fit. It is solved twice: by the model alone, and among models in which each number may be another in dark tones than
 * in light ones and on lines than on grain, and all that readings share may be off, each by as much as is believed and as the readings make
 * likely. Only the second is claimed; what the first alone would determine is told {@link FittedFigure.AsSeen as this model sees it}. A number is <em>determined</em> when its error is at most half of what was believed, half its 95 %
 * interval at most a quarter of its allowed range, and it does not lie at the end of that. Ink strength is held
 * as believed, since intervals found for it were seen to miss; what it would do to the others if that is wrong widens their errors.
 *
 * @param figures determined numbers, and for the others why not, in the order of {@link FitParameter}
 * @param misfit root of chi^2 over degrees of freedom; near 1 where the virtual plate explains the print, 2 or more where it does not
 * @param power of the scanner's codes, as ink and paper have it; empty where that was measured
 */
public record PlateLesson(List<FittedFigure> figures, double misfit, Optional<CodePower> power) {
    /** Tones that are used; more say little and cost much (assumed). */
    private static final int MOST_TONES = 8;

    /** A lesson's pixels over a job's: it needs slopes, and tones within half a unit (measured: docs/calibration.md). */
    private static final double COARSER = 4.0 / 3;

    /** Lines narrower than this many film pixels are drawn as the pixels allow, and say little. */
    private static final double LEAST_LINE_PIXELS = 2;

    public PlateLesson {
        figures = List.copyOf(figures);
    }

    /**
     * Learns.
     *
     * @param workshop the plate as the workshop makes it; its depth is replaced. No separate screen, no sprayed ground
     * @param depth of the test plate's bite; of no account where nothing is bitten
     * @param film the test plate's own grain or halftone
     * @param widestPixelMicrometres of the virtual plate as a job has it; a lesson takes a third more
     * @param measured the test plate's response; only tones up to its turning point are used
     * @param lines fields of line pairs; may be empty, but without them edges and optical gain are hardly told apart
     * @param readings of single numbers; may be empty
     * @param shared what all tones may be off by together
     */
    public static PlateLesson of(
            PlateConditions workshop,
            MeasuredDepth depth,
            FilmPatches film,
            double widestPixelMicrometres,
            MeasuredResponse measured,
            List<MeasuredLines> lines,
            List<FitReading> readings,
            SharedErrors shared) {
        if (workshop.exposures().size() != 1 || workshop.ground() != null) {
            throw Refusal.use(
                    "a lesson is asked of a plate with " + workshop.exposures().size()
                            + " exposures" + (workshop.ground() == null ? "" : " and a sprayed ground")
                            + "; it must be etched film or unetched film: use the measured response alone");
        }
        PlateConditions start = workshop.wells() instanceof Bath bath
                ? workshop.withWells(new Bath(depth.micrometres(), bath.etchFactor()))
                : workshop;
        LessonNumbers numbers = new LessonNumbers(start, depth.standardError());
        List<MeasuredLevel> levels = chosen(measured);
        List<FilmPatch> patches = new ArrayList<>();
        levels.forEach(level -> patches.add(matched(film, level.coverage())));
        double pitch = patches.get(0).pitchMicrometres();
        List<MeasuredLines> drawn = lines.stream()
                .filter(one -> one.periodMicrometres() >= 2 * LEAST_LINE_PIXELS * pitch)
                .toList();
        drawn.forEach(one -> patches.add(LinePatch.of(one.periodMicrometres(), pitch)));
        return new LessonSearch(
                        numbers,
                        new LessonModel(numbers, patches, COARSER * widestPixelMicrometres),
                        levels,
                        drawn,
                        readings,
                        shared)
                .found();
    }

    /** The determined numbers as changes of the workshop. {@code provenance} tells how a path's present value is known. */
    public List<FigureChange> changes(UnaryOperator<String> provenance) {
        List<FigureChange> changes = new ArrayList<>();
        for (FittedFigure figure : figures) {
            if (figure instanceof FittedFigure.Determined found) {
                String path = found.parameter().path();
                changes.add(new FigureChange(
                        path, found.before(), provenance.apply(path), found.value(), found.standardError()));
            }
        }
        return changes;
    }

    /** Levels up to the darkest, spread over them; bare paper is always one. */
    private static List<MeasuredLevel> chosen(MeasuredResponse measured) {
        List<MeasuredLevel> before = measured.levels().stream()
                .filter(level -> level.coverage() <= measured.turn().coverage())
                .toList();
        if (before.size() <= MOST_TONES) {
            return before;
        }
        List<MeasuredLevel> chosen = new ArrayList<>();
        for (int i = 0; i < MOST_TONES; i++) {
            chosen.add(before.get(Math.round(i * (before.size() - 1) / (float) (MOST_TONES - 1))));
        }
        return chosen;
    }

    /** A patch whose own coverage is that asked for: a cut piece of a grain has a little more or less. */
    private static FilmPatch matched(FilmPatches film, double coverage) {
        double asked = coverage;
        FilmPatch patch = film.at(asked);
        for (int round = 0; round < 4 && patch.isBits() && coverage > 0 && coverage < 1; round++) {
            double off = patch.coverage() - coverage;
            if (Math.abs(off) < 5e-4) {
                break;
            }
            asked = Math.max(0, Math.min(1, asked - off));
            patch = film.at(asked);
        }
        return patch;
    }
}
