package greyground.plate.split;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What two exposures can trade: a wide range of tones against a small gap at the light end.
 *
 * @param rows splits of which none is bettered in both by another, in rising order of gap and of range
 * @param advised the row that {@link #RULE} picks
 */
public record ExposureTrade(List<ExposureSplit> rows, ExposureSplit advised) {
    /** Share of the widest range that the advised split keeps. */
    public static final double KEPT_RANGE = 0.95;

    /** How the advised row was chosen, in words. */
    public static final String RULE = "the smallest gap among those that keep 95 % of the widest range";

    /** A row that adds less range than this to the one before is left out of a table. */
    private static final double TOLD_APART = 5;

    public ExposureTrade {
        rows = List.copyOf(rows);
    }

    /** Sorts splits into their front and picks the advised one. */
    static ExposureTrade of(List<ExposureSplit> splits) {
        if (splits.isEmpty()) {
            throw Refusal.use("no split of the two exposures within reach opens this plate and keeps its whites closed:"
                    + " allow longer exposures, or a screen with more black");
        }
        List<ExposureSplit> sorted = new ArrayList<>(splits);
        sorted.sort(Comparator.comparingDouble(ExposureSplit::lightGap)
                .thenComparing(Comparator.comparingDouble(ExposureSplit::range).reversed()));
        List<ExposureSplit> front = new ArrayList<>();
        for (ExposureSplit split : sorted) {
            if (front.isEmpty() || split.range() > front.get(front.size() - 1).range()) {
                front.add(split);
            }
        }
        double widest = front.get(front.size() - 1).range();
        ExposureSplit advised = front.stream()
                .filter(split -> split.range() >= KEPT_RANGE * widest)
                .findFirst()
                .orElseThrow();
        return new ExposureTrade(front, advised);
    }

    /** Rows enough to see the trade: each at least five units wider than the one before, and the advised and the widest. */
    public List<ExposureSplit> table() {
        List<ExposureSplit> told = new ArrayList<>();
        double before = Double.NEGATIVE_INFINITY;
        for (ExposureSplit row : rows) {
            boolean kept = row.equals(advised) || row.equals(rows.get(rows.size() - 1));
            if (kept || row.range() >= before + TOLD_APART) {
                told.add(row);
                before = row.range();
            }
        }
        return told;
    }
}
