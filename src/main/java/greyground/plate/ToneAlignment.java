package greyground.plate;

import greyground.tone.Lightness;
import greyground.tone.PlateResponse;
import greyground.tone.UsableCoverage;
import java.util.ArrayList;
import java.util.List;

/**
 * Moves the tones of a coarsely computed plate onto those of its response, computed more finely or measured, so that an even tone
 * prints in a picture as light as the response has it. They are compared at a few dozen coverages, from paper to the turning point;
 * between them the move runs straight, and past the darkest it stays what it is there. Lines and wide blacks, which no even
 * tone stands for, are moved like the tone they resemble.
 */
public final class ToneAlignment {
    /** Steps at which a measured response is compared; its levels are about as many. */
    private static final int STEPS = 32;

    private final double[] coarse;
    private final double[] fine;
    private final Paper paper;

    private ToneAlignment(List<double[]> pairs, Paper paper) {
        this.coarse = pairs.stream().mapToDouble(pair -> pair[0]).toArray();
        this.fine = pairs.stream().mapToDouble(pair -> pair[1]).toArray();
        this.paper = paper;
    }

    /**
     * Compares the two.
     *
     * @param plate computed as coarsely as the pictures are
     * @param patches of the job's film
     * @param response of the same plate, computed finely
     */
    public static ToneAlignment of(VirtualPlate plate, FilmPatches patches, VirtualResponse response) {
        Paper paper = plate.conditions().paper();
        List<ToneTerms> levels = response.levels().stream()
                .filter(level -> level.coverage() <= response.turningPoint())
                .toList();
        return of(
                plate,
                patches,
                levels.stream().map(ToneTerms::coverage).toList(),
                levels.stream()
                        .map(level -> rootOfDensity(level.density(), paper))
                        .toList());
    }

    /**
     * Compares with a response that is known in lightness alone, such as a measured one.
     *
     * @param plate computed for the pictures
     * @param patches of the job's film
     * @param response of the plate as it really printed
     */
    public static ToneAlignment of(VirtualPlate plate, FilmPatches patches, PlateResponse response) {
        Paper paper = plate.conditions().paper();
        UsableCoverage usable = response.usable();
        List<Double> coverages = new ArrayList<>();
        for (int i = 0; i <= STEPS; i++) {
            coverages.add(usable.least() + (usable.most() - usable.least()) * i / STEPS);
        }
        if (usable.least() > 0) {
            coverages.add(0, 0.0);
        }
        List<Double> roots = coverages.stream()
                .map(coverage ->
                        StrictMath.pow(Lightness.toLuminance(response.lightness(coverage)), 1 / paper.opticalGain()))
                .toList();
        return of(plate, patches, coverages, roots);
    }

    private static ToneAlignment of(
            VirtualPlate plate, FilmPatches patches, List<Double> coverages, List<Double> roots) {
        Paper paper = plate.conditions().paper();
        List<Double> coarse = coverages.parallelStream()
                .map(coverage -> plate.terms(coverage, patches.at(coverage)).density())
                .toList();
        List<double[]> pairs = new ArrayList<>();
        for (int i = 0; i < roots.size(); i++) {
            double[] pair = {rootOfDensity(coarse.get(i), paper), roots.get(i)};
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
