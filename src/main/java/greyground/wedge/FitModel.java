package greyground.wedge;

import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import java.util.Arrays;

/** The lightness that a plate's numbers foretell at the coverages of a test plate. */
public interface FitModel {
    /** Least error of a foretold tone, in L*. */
    double LEAST_ERROR = 0.3;

    /**
     * Foretells.
     *
     * @param conditions with the numbers to try
     * @return L* at each coverage the model was made for
     */
    double[] lightness(PlateConditions conditions);

    /**
     * Standard error of each, as far as the model is to blame.
     *
     * @param conditions as for {@link #lightness}
     */
    double[] errors(PlateConditions conditions);

    /**
     * The virtual plate without a screen film, on the test plate's own grain. Its error is that of its patch being a sample of the
     * grain, as the patch's quarters tell it, and at least 0.3 L*: a tone varies by 0.1 to 0.4 L* from piece to piece where it is
     * steady (measured, docs/virtual-plate.md), and by several near the turning point.
     *
     * @param coverages of the patches, in order
     * @param widestPixelMicrometres 9 is quick; see {@link VirtualPlate}
     */
    static FitModel virtualPlate(FilmPatches film, double[] coverages, double widestPixelMicrometres) {
        return new PlateModel(Arrays.stream(coverages).mapToObj(film::at).toList(), widestPixelMicrometres);
    }
}
