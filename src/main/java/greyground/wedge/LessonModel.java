package greyground.wedge;

import greyground.plate.FilmPatch;
import greyground.plate.InkOnPaper;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * The virtual plate made smooth. It is computed for a few dozen plates spread over the numbers that move edges and wells, and between
 * them tones are read from a quadratic that fits those near the point of interest best (local regression, Cleveland 1979, with a
 * Gaussian weight; from memory). So the small jumps with which film pixels cross a threshold are averaged, and told as
 * {@link #roughness}. Ink and paper are computed exactly.
 */
final class LessonModel {
    private static final int[] PRIMES = {2, 3, 5, 7};

    /** How far plates lie from the first in each number alone, in beliefs; assumed. */
    private static final double AXIS = 1.2;

    private final LessonNumbers numbers;
    private final List<FilmPatch> patches;
    private final double widestPixelMicrometres;
    private final int[] shaping;
    private final List<double[]> places = new ArrayList<>();
    private final List<List<InkOnPaper>> prints = new ArrayList<>();
    private double[] middle = new double[0];
    private RealMatrix smoother = new Array2DRowRealMatrix(1, 1);
    private double[] weights = new double[0];

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
        for (int k = 1; k <= count; k++) {
            double[] one = here.clone();
            for (int i = 0; i < one.length; i++) {
                one[i] += reach * (2 * FitLeastSquares.halton(places.size() + k, PRIMES[i]) - 1);
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
        middle = place(coordinates);
        int count = places.size();
        weights = new double[count];
        double[][] rows = new double[count][];
        for (int d = 0; d < count; d++) {
            double square = 0;
            for (int i = 0; i < middle.length; i++) {
                double off = (places.get(d)[i] - middle[i]) / bandwidth;
                square += off * off;
            }
            weights[d] = StrictMath.exp(-square / 2);
            rows[d] = basis(places.get(d));
            for (int k = 0; k < rows[d].length; k++) {
                rows[d][k] *= Math.sqrt(weights[d]);
            }
        }
        // Pseudo-inverse of the weighted rows: coefficients from weighted tones.
        RealMatrix inverse = new SingularValueDecomposition(new Array2DRowRealMatrix(rows))
                .getSolver()
                .getInverse();
        for (int k = 0; k < inverse.getRowDimension(); k++) {
            for (int d = 0; d < count; d++) {
                inverse.multiplyEntry(k, d, Math.sqrt(weights[d]));
            }
        }
        smoother = inverse;
    }

    /** Lightness of each patch. */
    double[] lightness(double[] coordinates) {
        double[][] tones = tones(coordinates);
        double[] shares = smoother.preMultiply(basis(place(coordinates)));
        double[] smooth = new double[patches.size()];
        for (int d = 0; d < shares.length; d++) {
            for (int p = 0; p < smooth.length; p++) {
                smooth[p] += shares[d] * tones[d][p];
            }
        }
        return smooth;
    }

    /** How far the plates near the middle lie from the quadratic, root mean square by patch, in L*. */
    double[] roughness(double[] coordinates) {
        double[][] tones = tones(coordinates);
        double[] squares = new double[patches.size()];
        double all = 0;
        double freedom = 0;
        for (int d = 0; d < tones.length; d++) {
            double[] shares = smoother.preMultiply(basis(places.get(d)));
            all += weights[d];
            freedom += weights[d] * (1 - shares[d]);
            for (int p = 0; p < squares.length; p++) {
                double off = tones[d][p];
                for (int k = 0; k < tones.length; k++) {
                    off -= shares[k] * tones[k][p];
                }
                squares[p] += weights[d] * off * off;
            }
        }
        double divisor = Math.max(freedom, 0.1 * all);
        for (int p = 0; p < squares.length; p++) {
            squares[p] = Math.sqrt(squares[p] / divisor);
        }
        return squares;
    }

    /** Error of each patch for being a sample of the grain, in L*. */
    double[] sampling(double[] coordinates) {
        PlateConditions conditions = numbers.with(coordinates);
        List<InkOnPaper> first = prints.get(0);
        double[] roots = PlateModel.roots(first, conditions);
        return first.stream()
                .mapToDouble(one -> one.lightnessError(roots, conditions.paper()))
                .toArray();
    }

    private double[][] tones(double[] coordinates) {
        PlateConditions conditions = numbers.with(coordinates);
        double[] roots = PlateModel.roots(prints.stream().flatMap(List::stream).toList(), conditions);
        return prints.stream()
                .map(one -> one.stream()
                        .mapToDouble(patch -> patch.lightness(roots, conditions.paper()))
                        .toArray())
                .toArray(double[][]::new);
    }

    private double[] place(double[] coordinates) {
        return IntStream.of(shaping)
                .mapToDouble(i -> (coordinates[i] - numbers.believed(i)) / numbers.spread(i))
                .toArray();
    }

    private double[] basis(double[] place) {
        int n = place.length;
        double[] basis = new double[1 + n + n * (n + 1) / 2];
        basis[0] = 1;
        int at = 1 + n;
        for (int i = 0; i < n; i++) {
            double one = place[i] - middle[i];
            basis[1 + i] = one;
            for (int k = i; k < n; k++) {
                basis[at++] = one * (place[k] - middle[k]);
            }
        }
        return basis;
    }
}
