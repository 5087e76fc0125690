package greyground.wedge;

import greyground.plate.FilmPatch;
import greyground.plate.Ink;
import greyground.plate.InkOnPaper;
import greyground.plate.Paper;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import greyground.plate.Wipe;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * The virtual plate as a model for fits. Density of ink, optical gain, paper and plate tone are the last steps of the chain, so
 * plates that differ in these alone share one computation; a few are kept.
 */
final class PlateModel implements FitModel {
    private static final int MOST_KEPT = 24;

    private final List<FilmPatch> patches;
    private final double widestPixelMicrometres;
    private final Map<PlateConditions, List<InkOnPaper>> kept = new LinkedHashMap<>();

    /** @param patches of film, one for each reading */
    PlateModel(List<FilmPatch> patches, double widestPixelMicrometres) {
        this.patches = List.copyOf(patches);
        this.widestPixelMicrometres = widestPixelMicrometres;
    }

    @Override
    public double[] lightness(PlateConditions conditions) {
        List<InkOnPaper> films = films(conditions);
        double[] roots = roots(films, conditions);
        return films.stream()
                .mapToDouble(one -> one.lightness(roots, conditions.paper()))
                .toArray();
    }

    @Override
    public double[] errors(PlateConditions conditions) {
        List<InkOnPaper> films = films(conditions);
        double[] roots = roots(films, conditions);
        return films.stream()
                .mapToDouble(one -> Math.max(LEAST_ERROR, one.lightnessError(roots, conditions.paper())))
                .toArray();
    }

    /** Of as many classes as any of the films has. */
    static double[] roots(List<InkOnPaper> films, PlateConditions conditions) {
        int classes = films.stream().mapToInt(InkOnPaper::classes).max().orElse(0);
        double tone =
                conditions.wipe().plateToneMicrometres() * conditions.ink().transferFraction();
        return InkOnPaper.roots(classes, conditions.ink(), conditions.paper(), tone);
    }

    /** What the films of ink are, patch by patch. */
    List<InkOnPaper> films(PlateConditions conditions) {
        PlateConditions undyed = undyed(conditions);
        synchronized (kept) {
            List<InkOnPaper> known = kept.remove(undyed);
            if (known == null) {
                VirtualPlate plate = new VirtualPlate(undyed, null, widestPixelMicrometres);
                known = IntStream.range(0, patches.size())
                        .parallel()
                        .mapToObj(i -> plate.inkOnPaper(patches.get(i)))
                        .toList();
            }
            kept.put(undyed, known);
            if (kept.size() > MOST_KEPT) {
                kept.remove(kept.keySet().iterator().next());
            }
            return known;
        }
    }

    /** The same plate before any density: what the films of ink depend on. */
    private static PlateConditions undyed(PlateConditions conditions) {
        Ink ink = conditions.ink();
        return new PlateConditions(
                conditions.exposures(),
                conditions.resist(),
                conditions.ground(),
                conditions.wells(),
                new Wipe(conditions.wipe().padRadiusMillimetres(), 0),
                new Ink(1, 0.1, ink.transferFraction(), ink.spreadMicrometres()),
                new Paper(0, 1));
    }
}
