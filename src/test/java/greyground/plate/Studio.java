package greyground.plate;

import java.util.List;

/** An invented workshop for tests; assumed figures, chosen within the ranges of common practice. */
public final class Studio {
    public static final Film FILM = new Film(0.06, 3, 0, 0);
    /** Ink side down on a 20 um cover sheet, lamp of 10 degrees half angle. */
    public static final Light LIGHT = new Light(20, 10, 1.65);

    public static final Resist RESIST = new Resist(30, 30, 0.0133, 1.66, 20, 20, 5);
    public static final Wipe WIPE = new Wipe(1.5, 0);
    public static final Ink INK = new Ink(1.7, 0.15, 0.8, 8);
    static final Paper PAPER = new Paper(0.06, 1.7);

    private Studio() {}

    /** Twice the hardening dose behind clear film, at which a straight half-shadow does not creep. */
    public static PlateConditions etched(double depthMicrometres, double etchFactor) {
        return new PlateConditions(
                List.of(image(2 * Math.pow(10, 0.06), LIGHT)),
                RESIST,
                null,
                new Bath(depthMicrometres, etchFactor),
                WIPE,
                INK,
                PAPER);
    }

    public static Exposure image(double dose, Light light) {
        return new Exposure(dose, Exposure.Sheet.POSITIVE, FILM, light);
    }

    public static PlateConditions sprayed(double depthMicrometres, SprayedGround ground) {
        PlateConditions plain = etched(depthMicrometres, 2);
        return new PlateConditions(
                plain.exposures(), RESIST, ground, plain.wells(), plain.wipe(), plain.ink(), plain.paper());
    }

    public static PlateConditions unetched(double dose) {
        return new PlateConditions(List.of(image(dose, LIGHT)), RESIST, null, new FilmRelief(), WIPE, INK, PAPER);
    }

    /** Screen dose 1.3 and image dose 1.15 of the threshold, screen edges 20 um soft. */
    public static PlateConditions photogravure(double depthMicrometres) {
        Film soft = new Film(0.06, 3, 0, 20);
        return new PlateConditions(
                List.of(new Exposure(1.3, Exposure.Sheet.SCREEN, soft, LIGHT), image(1.15, LIGHT)),
                new Resist(30, 30, 0.0133, 1.66, 20, 20, 5),
                null,
                new Bath(depthMicrometres, 2),
                WIPE,
                INK,
                PAPER);
    }
}
