package greyground.fit;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * What is left of the readings after a mean for each coverage and, if wished, smooth terms in the patch's place: weighted least
 * squares of {@code L = level + sum b_k c_k(x, y) + error}. The levels are taken out first by centring readings and terms on
 * their level's mean, which gives the same b (Frisch and Waugh 1933; Lovell 1963, from memory).
 *
 * @param scaled distance of each reading from the fit, in L*, times the root of its weight over the mean, which brings all to one
 *     variance
 * @param leverage share of each reading in its own fitted value, 0 to 1
 * @param slopes of the terms
 * @param sum of the squares of {@code scaled}
 * @param degrees readings less levels and terms; the variance is {@code sum} over this
 */
record MeasuredResiduals(RealVector scaled, RealVector leverage, RealVector slopes, double sum, int degrees) {
    /** A column that the levels or the other columns explain but for this share of its squares says nothing. */
    private static final double NOTHING = 1e-9;

    /**
     * Fits.
     *
     * @param patches sorted by coverage; equal coverages make a level
     * @param terms functions of a patch's place
     */
    static MeasuredResiduals of(List<MeasuredPatch> patches, List<ToDoubleFunction<MeasuredPatch>> terms) {
        int n = patches.size();
        double mean = patches.stream().mapToDouble(MeasuredPatch::weight).sum() / n;
        RealVector root = new ArrayRealVector(n);
        RealVector leverage = new ArrayRealVector(n);
        int[] level = new int[n];
        int levels = 0;
        for (int from = 0; from < n; from = level[from], levels++) {
            int to = from;
            double weight = 0;
            while (to < n && patches.get(to).coverage() == patches.get(from).coverage()) {
                weight += patches.get(to++).weight();
            }
            for (int i = from; i < to; i++) {
                level[i] = to;
                root.setEntry(i, Math.sqrt(patches.get(i).weight() / mean));
                leverage.setEntry(i, patches.get(i).weight() / weight);
            }
        }
        RealVector rest = centred(patches, level, root, MeasuredPatch::lightness);
        RealMatrix columns = new Array2DRowRealMatrix(n, Math.max(1, terms.size()));
        for (int c = 0; c < terms.size(); c++) {
            RealVector column = centred(patches, level, root, terms.get(c));
            double whole =
                    patches.stream().mapToDouble(terms.get(c)).map(v -> v * v).sum();
            if (column.dotProduct(column) > NOTHING * whole) {
                columns.setColumnVector(c, column);
            }
        }
        SingularValueDecomposition parts = new SingularValueDecomposition(columns);
        double[] singular = parts.getSingularValues();
        RealVector slopes = new ArrayRealVector(terms.size());
        int rank = 0;
        for (int c = 0; c < singular.length; c++) {
            if (singular[c] * singular[c] > NOTHING * singular[0] * singular[0]) {
                RealVector direction = parts.getU().getColumnVector(c);
                double along = direction.dotProduct(rest);
                slopes = slopes.add(parts.getV().getColumnVector(c).mapMultiply(along / singular[c]));
                rest = rest.subtract(direction.mapMultiply(along));
                leverage = leverage.add(direction.ebeMultiply(direction));
                rank++;
            }
        }
        return new MeasuredResiduals(rest, leverage, slopes, rest.dotProduct(rest), n - levels - rank);
    }

    /** A function less its level's weighted mean, times the root of each weight. */
    private static RealVector centred(
            List<MeasuredPatch> patches, int[] level, RealVector root, ToDoubleFunction<MeasuredPatch> value) {
        RealVector centred = new ArrayRealVector(level.length);
        for (int from = 0; from < level.length; from = level[from]) {
            double sum = 0;
            double weight = 0;
            for (MeasuredPatch patch : patches.subList(from, level[from])) {
                sum += patch.weight() * value.applyAsDouble(patch);
                weight += patch.weight();
            }
            for (int i = from; i < level[from]; i++) {
                centred.setEntry(i, (value.applyAsDouble(patches.get(i)) - sum / weight) * root.getEntry(i));
            }
        }
        return centred;
    }
}
