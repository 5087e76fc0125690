package greyground.plate.neighbourhood;

import greyground.plate.PlateConditions;
import greyground.plate.PlateStates;

/** Looks at the copper by lamps at the four corners, since by one lamp a pattern's turns look otherwise. */
@FunctionalInterface
public interface LampView {
    /**
     * Looks at a patch.
     *
     * @return brightness of each pixel by each lamp; of a corner's number 1 is the right and 2 below
     */
    float[][] fromCorners(PlateConditions conditions, PlateStates states);
}
