package greyground.fit;

import greyground.plate.FilmPatch;
import greyground.plate.InkOnPaper;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The virtual plate made smooth. It is computed for a few dozen plates spread over the numbers that move edges and wells, and between
 * them tones are read from a quadratic that fits those near the point of interest best (local regression, Cleveland & Devlin 1988, with a
 * Gaussian weight; from memory). So the small jumps with which film pixels cross a threshold are averaged, and told as
 * {@link #roughness}. Ink and paper are computed exactly.
 */
final class LessonModel {
    /** How far plates lie from the first in each number alone, in beliefs; assumed. */
    private static final double AXIS = 1.2;

    private final LessonNumbers numbers;
    private final List<FilmPatch> patches;
    private final double widestPixelMicrometres;
    private final int[] shaping;
    private final List<double[]> places = new ArrayList<>();
    private final List<List<InkOnPaper>> prints = new ArrayList<>();
    private LocalQuadratic local = new LocalQuadratic(List.of(new double[0]), new double[0], 1);

    LessonModel(LessonNumbers numbers, List<FilmPatch> patches, double widestPixelMicrometres) {
        this.numbers = numbers;
        this.patches = List.copyOf(patches);
        this.widestPixelMicrometres = widestPixelMicrometres;
        this.shaping =
                IntStream.range(0, numbers.size()).filter(numbers::shapes).toArray();
    }

    /** Width of the pixels that the plates are computed on. */
    double pixelMicrometres() {
        double pitch = patches.get(0).pitchMicrometres();
        return pitch / Math.ceil(pitch / widestPixelMicrometres - 1e-9);
    }

    /** Computes the plate in the middle, one on either side in each number, and others spread within {@code reach} beliefs. */
    void spread(double[] coordinates, double reach, int count, boolean axes) {
        List<double[]> more = new ArrayList<>();
        double[] here = place(coordinates);
        more.add(here);
        for (int i = 0; axes && i < here.length; i++) {
            for (double side : new double[] {-AXIS, AXIS}) {
                double[] beside = here.clone();
                beside[i] += side;
                more.add(beside);
            }
        }
        for (double[] share : FitLeastSquares.halton(here.length, places.size() + 1, count)) {
            double[] one = here.clone();
            for (int i = 0; i < one.length; i++) {
                one[i] += reach * (2 * share[i] - 1);
            }
            more.add(one);
        }
        for (double[] place : more) {
            double[] at = coordinates.clone();
            for (int i = 0; i < shaping.length; i++) {
                int number = shaping[i];
                at[number] = Math.max(
                        numbers.least(number),
                        Math.min(numbers.most(number), numbers.believed(number) + place[i] * numbers.spread(number)));
            }
            places.add(place(at));
            prints.add(printed(numbers.with(at)));
        }
    }

    private List<InkOnPaper> printed(PlateConditions conditions) {
        VirtualPlate plate = new VirtualPlate(conditions, null, widestPixelMicrometres);
        return patches.parallelStream().map(plate::inkOnPaper).toList();
    }

    /** Fits the quadratic anew; plates {@code bandwidth} beliefs from the middle weigh 0.6 of those there. */
    void centre(double[] coordinates, double bandwidth) {
        local = new LocalQuadratic(places, place(coordinates), bandwidth);
    }

    double[] lightness(double[] coordinates) {
        return tones(coordinates).preMultiply(local.shares(place(coordinates)));
    }

    /** How far the plates near the middle lie from the quadratic, root mean square by patch, in L*. */
    double[] roughness(double[] coordinates) {
        RealMatrix tones = tones(coordinates);
        RealVector squares = new ArrayRealVector(patches.size());
        double all = 0;
        double freedom = 0;
        for (int d = 0; d < places.size(); d++) {
            double[] shares = local.shares(places.get(d));
            double weight = local.weight(d);
            all += weight;
            freedom += weight * (1 - shares[d]);
            RealVector off = tones.getRowVector(d).subtract(new ArrayRealVector(tones.preMultiply(shares), false));
            squares = squares.add(off.ebeMultiply(off).mapMultiply(weight));
        }
        double divisor = Math.max(freedom, 0.1 * all);
        return squares.map(square -> Math.sqrt(square / divisor)).toArray();
    }

    /** Error of each patch for being a sample of the grain, in L*. */
    double[] sampling(double[] coordinates) {
        PlateConditions conditions = numbers.with(coordinates);
        List<InkOnPaper> first = prints.get(0);
        double[] roots = roots(first, conditions);
        return first.stream()
                .mapToDouble(one -> one.lightnessError(roots, conditions.paper()))
                .toArray();
    }

    /** Lightness of every plate computed, a row each, of every patch. */
    private RealMatrix tones(double[] coordinates) {
        PlateConditions conditions = numbers.with(coordinates);
        double[] roots = roots(prints.stream().flatMap(List::stream).toList(), conditions);
        return new Array2DRowRealMatrix(
                prints.stream()
                        .map(one -> one.stream()
                                .mapToDouble(patch -> patch.lightness(roots, conditions.paper()))
                                .toArray())
                        .toArray(double[][]::new),
                false);
    }

    private double[] place(double[] coordinates) {
        return IntStream.of(shaping)
                .mapToDouble(i -> (coordinates[i] - numbers.believed(i)) / numbers.spread(i))
                .toArray();
    }

    /** Of as many classes as any of the films has. */
    private static double[] roots(List<InkOnPaper> films, PlateConditions conditions) {
        int classes = films.stream().mapToInt(InkOnPaper::classes).max().orElse(0);
        double tone =
                conditions.wipe().plateToneMicrometres() * conditions.ink().transferFraction();
        return InkOnPaper.roots(classes, conditions.ink(), conditions.paper(), tone);
    }
}
