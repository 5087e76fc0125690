package greyground.workshop;

/**
 * The ground this shop sprays.
 *
 * @param dryingMinutes before the bite, 0 to 1440
 */
public record Aquatint(Figure dryingMinutes) {
    public Aquatint {
        dryingMinutes.within("aquatint.dryingMinutes", 0, 1440, "min", "follow the material's data sheet");
    }

    /** Dry to the nose. */
    public static Aquatint assumed() {
        return new Aquatint(
                Figure.assumed(20, "common practice: until it no longer smells; follow the material's data sheet"));
    }
}
