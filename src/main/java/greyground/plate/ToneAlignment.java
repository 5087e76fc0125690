package greyground.plate;

import greyground.tone.Lightness;
import greyground.tone.PlateResponse;
import greyground.tone.UsableCoverage;
import java.util.ArrayList;
import java.util.List;

/**
 * Moves the tones of a plate onto those of a response known better, computed more finely or measured, so that an even tone
 * prints in a picture as light as the response has it. They are compared at a few dozen coverages, from paper to the turning point;
 * between them the move runs straight, and past the darkest it stays what it is there. Lines and wide blacks, which no even
 * tone stands for, are moved like the tone they resemble.
 */
public final class ToneAlignment {
    private final double[] coarse;
    private final double[] fine;
    private final Paper paper;

    private ToneAlignment(List<double[]> pairs, Paper paper) {
        this.coarse = pairs.stream().mapToDouble(pair -> pair[0]).toArray();
        this.fine = pairs.stream().mapToDouble(pair -> pair[1]).toArray();
        this.paper = paper;
    }

    /**
     * From a plate computed more coarsely to its response.
     *
     * @param plate computed as coarsely as the pictures are
     * @param patches of the job's film
     * @param response of the same plate, computed finely
     */
    public static ToneAlignment of(VirtualPlate plate, FilmPatches patches, VirtualResponse response) {
        Paper paper = plate.conditions().paper();
        List<ToneTerms> levels = fallingLevels(response);
        return of(
                levels.parallelStream()
                        .map(level -> plate.terms(level.coverage(), patches.at(level.coverage()))
                                .density())
                        .map(density -> rootOfDensity(density, paper))
                        .toList(),
                levels.stream()
                        .map(level -> rootOfDensity(level.density(), paper))
                        .toList(),
                paper);
    }

    /**
     * From a response that the virtual plate predicted to that of the plate as it really printed, which is known in lightness alone.
     *
     * @param measured of the same film
     */
    public static ToneAlignment of(VirtualResponse predicted, PlateResponse measured, Paper paper) {
        UsableCoverage usable = measured.usable();
        List<ToneTerms> levels = fallingLevels(predicted).stream()
                .filter(level -> level.coverage() == 0
                        || (level.coverage() >= usable.least() && level.coverage() <= usable.most()))
                .toList();
        return of(
                levels.stream()
                        .map(level -> rootOfDensity(level.density(), paper))
                        .toList(),
                levels.stream()
                        .map(level -> StrictMath.pow(
                                Lightness.toLuminance(measured.lightness(level.coverage())), 1 / paper.opticalGain()))
                        .toList(),
                paper);
    }

    private static List<ToneTerms> fallingLevels(VirtualResponse response) {
        return response.levels().stream()
                .filter(level -> level.coverage() <= response.turningPoint())
                .toList();
    }

    private static ToneAlignment of(List<Double> coarse, List<Double> fine, Paper paper) {
        List<double[]> pairs = new ArrayList<>();
        for (int i = 0; i < fine.size(); i++) {
            double[] pair = {coarse.get(i), fine.get(i)};
            // From light to dark; what does not fall is a sample's noise, or the light gap.
            double[] before = pairs.isEmpty() ? null : pairs.get(pairs.size() - 1);
            if (before == null || (pair[0] < before[0] && pair[1] < before[1])) {
                pairs.add(pair);
            }
        }
        return new ToneAlignment(pairs, paper);
    }

    private static double rootOfDensity(double density, Paper paper) {
        return StrictMath.pow(10, -density / paper.opticalGain());
    }

    /** R^(1/n) as the response would have it, from that of the coarse plate. */
    public double root(double coarseRoot) {
        int last = coarse.length - 1;
        if (coarseRoot >= coarse[0]) {
            return coarseRoot + fine[0] - coarse[0];
        }
        if (coarseRoot <= coarse[last]) {
            return Math.max(0, coarseRoot + fine[last] - coarse[last]);
        }
        int below = 1;
        while (coarse[below] > coarseRoot) {
            below++;
        }
        double share = (coarse[below - 1] - coarseRoot) / (coarse[below - 1] - coarse[below]);
        return fine[below - 1] + share * (fine[below] - fine[below - 1]);
    }

    /** The map with every tone moved. */
    public PlateMap of(PlateMap roots) {
        float[] moved = new float[roots.values().length];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = (float) root(roots.values()[i]);
        }
        return new PlateMap(roots.window(), moved);
    }

    /** The most that any even tone is moved, in L*. */
    public double mostLightness() {
        double most = 0;
        for (int i = 0; i < coarse.length; i++) {
            double from = Paper.lightness(paper.reflectance(coarse[i]));
            double to = Paper.lightness(paper.reflectance(fine[i]));
            most = Math.max(most, Math.abs(from - to));
        }
        return most;
    }
}
