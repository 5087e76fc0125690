package greyground.colour;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * What colour a scanner's three signals stand for, from fields of the very print that were measured: least squares with weights Y^(-2/3), about
 * even in L*. Of the sums of terms the one is taken that foretells fields best that it was not fitted to, all fields of one colour left out
 * together.
 */
public final class ScannerFit {
    /** Fewest colours from which a scanner can be judged (assumed). */
    public static final int FEWEST_COLOURS = 8;

    /** Weights rise no further below this luminance (assumed). */
    private static final double DARKEST = 0.004;

    private static final double SINGULAR = 1e-9;

    /** Sums of terms of red, green and blue. */
    private enum Terms {
        /** The signals themselves. */
        LINEAR(3, 6),
        /** And the roots of their products, which scale as they do (Finlayson, Mackiewicz and Hurlbert 2015, from memory). */
        ROOTS(6, 12),
        /** A constant, the signals, their products and squares. */
        SQUARES(10, 20);

        private final int count;
        private final int fewestColours;

        Terms(int count, int fewestColours) {
            this.count = count;
            this.fewestColours = fewestColours;
        }

        double[] of(double[] rgb) {
            double r = rgb[0];
            double g = rgb[1];
            double b = rgb[2];
            return switch (this) {
                case LINEAR -> rgb.clone();
                case ROOTS -> new double[] {r, g, b, root(r * g), root(r * b), root(g * b)};
                case SQUARES -> new double[] {1, r, g, b, r * g, r * b, g * b, r * r, g * g, b * b};
            };
        }

        private static double root(double product) {
            return StrictMath.sqrt(Math.max(0, product));
        }
    }

    /**
     * A field that was scanned and measured.
     *
     * @param colour which colour of the print it is: fields that were printed alike share one
     * @param signal linear red, green and blue of the scan; bare paper's are 1
     * @param measured by a spectrophotometer
     */
    public record Field(int colour, Signal signal, Xyz measured) {}

    /**
     * A scanner's signals.
     *
     * @param red linear, as green and blue
     */
    public record Signal(double red, double green, double blue) {
        double[] values() {
            return new double[] {red, green, blue};
        }
    }

    private final Terms terms;
    private final double[][] rows;
    private final double error;

    private ScannerFit(Terms terms, double[][] rows, double error) {
        this.terms = terms;
        this.rows = rows;
        this.error = error;
    }

    /** Fits fields of {@value #FEWEST_COLOURS} colours or more. */
    public static ScannerFit of(List<Field> fields) {
        List<Integer> colours =
                fields.stream().map(Field::colour).distinct().sorted().toList();
        Refusal.checkRange(
                "number of colours that were measured",
                colours.size(),
                FEWEST_COLOURS,
                Integer.MAX_VALUE,
                "",
                "measure some 24 fields of the print, as unlike each other as there are");
        Optional<ScannerFit> best = Optional.empty();
        for (Terms terms : Terms.values()) {
            if (colours.size() >= terms.fewestColours) {
                Optional<ScannerFit> fitted = fitted(terms, fields, colours);
                if (best.isEmpty() || (fitted.isPresent() && fitted.get().error < best.get().error)) {
                    best = fitted;
                }
            }
        }
        return best.orElseThrow(() -> Refusal.use(
                "the fields that were measured are too much alike to tell what the scanner's signals mean: measure fields of"
                        + " each ink and of inks over one another"));
    }

    private static Optional<ScannerFit> fitted(Terms terms, List<Field> fields, List<Integer> colours) {
        Optional<double[][]> all = solved(terms, fields);
        if (all.isEmpty()) {
            return Optional.empty();
        }
        double squares = 0;
        int count = 0;
        for (int colour : colours) {
            List<Field> rest = new ArrayList<>();
            List<Field> left = new ArrayList<>();
            fields.forEach(field -> (field.colour() == colour ? left : rest).add(field));
            Optional<double[][]> without = solved(terms, rest);
            if (without.isEmpty()) {
                return Optional.empty();
            }
            ScannerFit other = new ScannerFit(terms, without.get(), 0);
            for (Field field : left) {
                double off = Lab.of(other.colour(field.signal())).difference(Lab.of(field.measured()));
                squares += off * off;
                count++;
            }
        }
        return Optional.of(new ScannerFit(terms, all.get(), StrictMath.sqrt(squares / count)));
    }

    private static Optional<double[][]> solved(Terms terms, List<Field> fields) {
        RealMatrix system = new Array2DRowRealMatrix(fields.size(), terms.count);
        RealMatrix wished = new Array2DRowRealMatrix(fields.size(), 3);
        for (int i = 0; i < fields.size(); i++) {
            Field field = fields.get(i);
            double weight = StrictMath.pow(Math.max(DARKEST, field.measured().y()), -2.0 / 3);
            RealVector row = new ArrayRealVector(terms.of(field.signal().values()));
            system.setRowVector(i, row.mapMultiply(weight));
            wished.setRowVector(i, new ArrayRealVector(field.measured().values()).mapMultiply(weight));
        }
        if (fields.size() < terms.count) {
            return Optional.empty();
        }
        DecompositionSolver solver = new QRDecomposition(system, SINGULAR).getSolver();
        return solver.isNonSingular()
                ? Optional.of(solver.solve(wished).transpose().getData())
                : Optional.empty();
    }

    /** Colour of a signal; light below none is none. */
    public Xyz colour(Signal signal) {
        double[] sums = new double[3];
        double[] each = terms.of(signal.values());
        for (int row = 0; row < 3; row++) {
            for (int i = 0; i < each.length; i++) {
                sums[row] += rows[row][i] * each[i];
            }
            sums[row] = Math.max(1e-5, sums[row]);
        }
        return Xyz.of(sums);
    }

    /** How far it is out on fields that it was not fitted to: root mean square of CIEDE2000. */
    public double error() {
        return error;
    }
}
