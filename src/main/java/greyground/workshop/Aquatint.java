package greyground.workshop;

/**
 * The ground this shop sprays.
 *
 * @param landFraction share of the open copper that it covers, 0.05 to 0.9
 * @param grainMicrometres mean diameter of a grain, 5 to 300
 * @param dryingMinutes before the bite, 0 to 1440
 */
public record Aquatint(Figure landFraction, Figure grainMicrometres, Figure dryingMinutes) {
    public Aquatint {
        landFraction.within("aquatint.landFraction", 0.05, 0.9, "", "0.4 to 0.6 is usual");
        grainMicrometres.within("aquatint.grainMicrometres", 5, 300, "um", "30 to 80 um is a medium grain");
        dryingMinutes.within("aquatint.dryingMinutes", 0, 1440, "min", "follow the material's data sheet");
    }

    /** Half covered by a medium grain. */
    public static Aquatint assumed() {
        return new Aquatint(
                Figure.assumed(0.5, "Notes on Aquatint Technique: about half the surface stays land"),
                Figure.assumed(50, "from memory: medium grain 30-80 um, unverified"),
                Figure.assumed(20, "common practice: until it no longer smells; follow the material's data sheet"));
    }

    Aquatint through(Fields fields) {
        return new Aquatint(
                fields.figure("landFraction", landFraction),
                fields.figure("grainMicrometres", grainMicrometres),
                fields.figure("dryingMinutes", dryingMinutes));
    }
}
