package greyground.plan;

import greyground.quantity.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * A strip covered step by step, so that one plate carries a series of exposures or bites, each a constant number of times the last.
 *
 * @param totals what each part gets in all, shortest first
 * @param additions what is given before each covering: the first total, then the differences
 */
public record TestStrip(List<Double> totals, List<Double> additions) {
    public TestStrip {
        totals = List.copyOf(totals);
        additions = List.copyOf(additions);
    }

    /**
     * A series that holds {@code middle} in its middle part.
     *
     * @param parts odd, 3 to 21
     * @param stepDensity density between parts, 0.15 for a wedge's step
     */
    public static TestStrip around(double middle, int parts, double stepDensity) {
        Refusal.checkRange("test strip parts", parts, 3, 21, "", "5 or 7 is usual");
        List<Double> totals = new ArrayList<>();
        List<Double> additions = new ArrayList<>();
        double before = 0;
        for (int part = 0; part < parts; part++) {
            double total = middle * StrictMath.pow(10, stepDensity * (part - (parts - 1) / 2.0));
            totals.add(total);
            additions.add(total - before);
            before = total;
        }
        return new TestStrip(totals, additions);
    }
}
