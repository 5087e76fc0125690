package greyground.workshop;

/**
 * How the plate is wiped.
 *
 * @param padRadiusMillimetres effective radius of the wiping pad, 0.01 to 100
 */
public record Wipe(Figure padRadiusMillimetres) {
    public Wipe {
        padRadiusMillimetres.within(
                "wipe.padRadiusMillimetres", 0.01, 100, "mm", "widest bar still solid, squared, over 8 x depth");
    }

    /** A firm canvas pad. */
    public static Wipe assumed() {
        return new Wipe(Figure.assumed(1.5, "from memory, unverified: a 0.5 mm bar just holds at 20 um depth"));
    }

    Wipe through(Fields fields) {
        return new Wipe(fields.figure("padRadiusMillimetres", padRadiusMillimetres));
    }
}
