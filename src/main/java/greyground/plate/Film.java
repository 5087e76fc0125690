package greyground.plate;

import greyground.quantity.Refusal;

/**
 * What the film printer lays down, as the light that hardens the resist sees it (not as the eye does).
 *
 * @param clearDensity optical density of unprinted film, 0 to 2
 * @param blackDensity optical density of solid black, above clear, at most 6
 * @param spotGrowthMicrometres how far a printed edge lies outside its nominal place, -50 to 100; bits only
 * @param softnessMicrometres standard deviation of the printed edge's blur, 0 to 200
 */
public record Film(double clearDensity, double blackDensity, double spotGrowthMicrometres, double softnessMicrometres) {
    public Film {
        Refusal.checkRange("density of clear film", clearDensity, 0, 2, "", "measure it in the lamp's own light");
        Refusal.checkRange(
                "density of black film", blackDensity, clearDensity, 6, "", "it can't be clearer than clear");
        Refusal.checkRange("spot growth", spotGrowthMicrometres, -50, 100, "µm", "measure single lines under a loupe");
        Refusal.checkRange("film edge softness", softnessMicrometres, 0, 200, "µm", "10 to 30 µm is a soft edge");
    }

    /** Share of light that an optical density lets through, 10^-D (ISO 5-1:2009). */
    public static double transmission(double density) {
        return StrictMath.pow(10, -density);
    }

    /** The same film with other spots. */
    public Film withSpotGrowth(double micrometres) {
        return new Film(clearDensity, blackDensity, micrometres, softnessMicrometres);
    }
}
