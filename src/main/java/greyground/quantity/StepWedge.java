package greyground.quantity;

import java.util.ArrayList;
import java.util.List;

/**
 * A transmission step wedge: a strip of rising densities, laid beside the film at exposure.
 *
 * @param densities of the steps, step 1 first, rising; 2 to 200 of them. Uncalibrated wedges stray from the nominal
 *     values by 0.02 to 0.05 (from memory, unverified), so a shop types in the measured ones
 */
public record StepWedge(List<Double> densities) {
    public StepWedge {
        densities = List.copyOf(densities);
        Refusal.checkRange("wedge step count", densities.size(), 2, 200, "", "a usual wedge has 21");
        for (int i = 0; i < densities.size(); i++) {
            Refusal.checkRange("density of wedge step " + (i + 1), densities.get(i), 0, 10, "D", "measure it again");
            if (i > 0 && densities.get(i) <= densities.get(i - 1)) {
                throw Refusal.use("density of wedge step " + (i + 1) + " is " + Refusal.plain(densities.get(i))
                        + " D, not above step " + i + "'s " + Refusal.plain(densities.get(i - 1))
                        + " D: list the steps from clear to black");
            }
        }
    }

    /** Steps of equal rise: D_k = first + rise (k - 1). */
    public static StepWedge even(double first, double rise, int steps) {
        List<Double> densities = new ArrayList<>();
        for (int i = 0; i < steps; i++) {
            densities.add(first + rise * i);
        }
        return new StepWedge(densities);
    }

    /** The usual wedge: 21 steps of 0.15 from 0.05 to 3.05 (nominal values as quoted by its users). */
    public static StepWedge usual() {
        return even(0.05, Density.PER_WEDGE_STEP, 21);
    }

    /** Number of steps. */
    public int steps() {
        return densities.size();
    }

    /**
     * Density of a step.
     *
     * @param step 1 to {@link #steps()}
     */
    public Density density(int step) {
        Refusal.checkRange("wedge step", step, 1, steps(), "", "count from the clear end");
        return new Density(densities.get(step - 1));
    }
}
