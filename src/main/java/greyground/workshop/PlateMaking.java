package greyground.workshop;

import greyground.grain.Grain;
import greyground.plate.PlateProcess;
import greyground.quantity.Refusal;
import greyground.quantity.Resolution;
import java.util.ArrayList;
import java.util.List;

/**
 * How a plate is made, as far as the shop decides its tones: two plates made alike print the same coverage alike.
 *
 * @param process with its settings; the seed of a sprayed ground says nothing
 * @param grain that carries the tones; its seed says nothing
 * @param resolution of the film
 * @param inkDown whether the film's ink lies on the resist
 * @param biteMinutes in the shop's usual bath, 0 where nothing is bitten
 * @param exposureSeconds both exposures together, by the lamp and film they were found with
 */
public record PlateMaking(
        PlateProcess process,
        Grain grain,
        Resolution resolution,
        boolean inkDown,
        double biteMinutes,
        double exposureSeconds) {
    /** Times this close are the same: far less than a bench can tell (assumed). */
    private static final double SAME_SHARE = 0.01;

    public PlateMaking {
        Refusal.checkRange("bite of a measured plate", biteMinutes, 0, 1440, "min", "0 where nothing is bitten");
        Refusal.checkRange(
                "exposure of a measured plate", exposureSeconds, 0.1, 720_000, "s", "give both exposures together");
    }

    /**
     * What keeps this plate's tones from another.
     *
     * @param other a plate to be made
     * @return one phrase for each difference, this first, such as "a bite of 20 min, not 25"; empty when made alike
     */
    public List<String> differencesFrom(PlateMaking other) {
        List<String> found = new ArrayList<>();
        add(found, processWords(), other.processWords());
        add(found, grain.name(), other.grain.name());
        add(found, dots(resolution), dots(other.resolution));
        add(found, side(inkDown), side(other.inkDown));
        if (!same(biteMinutes, other.biteMinutes)) {
            found.add("a bite of " + tenths(biteMinutes) + " min, not " + tenths(other.biteMinutes));
        }
        if (!same(exposureSeconds, other.exposureSeconds)) {
            found.add("an exposure of " + tenths(exposureSeconds) + " s, not " + tenths(other.exposureSeconds));
        }
        return found;
    }

    /** How it was bitten and exposed: "bitten 20 min, exposed 150 s". */
    public String words() {
        return (biteMinutes == 0 ? "not bitten" : "bitten " + tenths(biteMinutes) + " min") + ", exposed "
                + tenths(exposureSeconds) + " s";
    }

    private static void add(List<String> found, String mine, String others) {
        if (!mine.equals(others)) {
            found.add(mine + ", not " + others);
        }
    }

    private static boolean same(double one, double other) {
        return Math.abs(one - other) <= SAME_SHARE * Math.max(one, other);
    }

    private static String tenths(double value) {
        return Refusal.plain(Math.rint(value * 10) / 10);
    }

    private static String dots(Resolution resolution) {
        return Refusal.plain(resolution.dotsPerInch()) + " dpi";
    }

    private static String side(boolean inkDown) {
        return inkDown ? "ink side down" : "ink side up";
    }

    private String processWords() {
        if (process instanceof PlateProcess.Photogravure gravure) {
            return gravure.word() + " with a screen of "
                    + Refusal.plain(gravure.screenSpacingMicrometres()) + " µm, "
                    + Refusal.plain(gravure.screenBlack() * 100) + " % black, "
                    + gravure.split()
                            .map(split -> "doses " + Refusal.plain(split.screenDose()) + " and "
                                    + Refusal.plain(split.imageDose()) + ", edges "
                                    + Refusal.plain(split.edgeBlurMicrometres())
                                    + " µm soft")
                            .orElse("the workshop's two exposures");
        }
        return process instanceof PlateProcess.SprayedAquatint ground
                ? ground.word() + " of " + Refusal.plain(ground.grainMicrometres()) + " µm covering "
                        + Refusal.plain(ground.landFraction() * 100) + " %"
                : process.word();
    }
}
