package greyground.wedge;

import greyground.plate.FilmPatch;
import greyground.plate.FilmPatches;
import greyground.plate.PlateConditions;
import greyground.plate.VirtualPlate;
import java.util.List;
import java.util.stream.IntStream;

/** The lightness that a plate's numbers foretell at the coverages of a test plate. */
@FunctionalInterface
public interface FitModel {
    /**
     * Foretells.
     *
     * @param conditions with the numbers to try
     * @return L* at each coverage the model was made for
     */
    double[] lightness(PlateConditions conditions);

    /**
     * The virtual plate without a screen film, on the test plate's own grain.
     *
     * @param coverages of the patches, in order
     * @param widestPixelMicrometres 9 is quick; see {@link VirtualPlate}
     */
    static FitModel virtualPlate(FilmPatches film, double[] coverages, double widestPixelMicrometres) {
        List<FilmPatch> patches = IntStream.range(0, coverages.length)
                .mapToObj(i -> film.at(coverages[i]))
                .toList();
        double[] asked = coverages.clone();
        return conditions -> {
            VirtualPlate plate = new VirtualPlate(conditions, null, widestPixelMicrometres);
            return IntStream.range(0, asked.length)
                    .parallel()
                    .mapToDouble(i -> plate.terms(asked[i], patches.get(i)).lightness())
                    .toArray();
        };
    }
}
