package greyground.workshop;

/**
 * What the washed and dried film gets before the bite.
 *
 * @param minutes under the lamp without film, 0 to 240
 */
public record Hardening(Figure minutes) {
    public Hardening {
        minutes.within("hardening.minutes", 0, 240, "min", "10 is usual");
    }

    /** Ten minutes. */
    public static Hardening assumed() {
        return new Hardening(Figure.assumed(10, "common practice, no source"));
    }
}
