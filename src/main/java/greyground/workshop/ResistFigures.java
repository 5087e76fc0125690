package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Refusal;
import greyground.quantity.Unit;

/**
 * The photopolymer film on the copper. Doses are relative: 1 is the dose that hardens the film right through.
 *
 * @param thicknessMicrometres as laminated, 5 to 200
 * @param thinningMinutes in the soda bath before exposure, 0 (not thinned) to 240
 * @param thinningLeastMinutes start of the shop's window, 0 to 240
 * @param thinningMostMinutes end of the shop's window, above its start, to 240
 * @param thinningGramsPerLitre soda in the thinning bath, 1 to 100
 * @param thinningCelsius of the thinning bath, 5 to 60
 * @param thinnedThicknessMicrometres left after thinning, 1 to 200
 * @param absorbancePerMicrometre decadic absorbance of the unexposed film, 0 to 0.5
 * @param contrastGamma slope of retained thickness against log10 dose, 0.2 to 50
 * @param smallestOpeningMicrometres narrowest opening that washes clean, 1 to 500
 * @param smallestLandMicrometres narrowest land that stays on, 1 to 500
 * @param leastHoldMicrometres width of copper under a land below which it lets go in the bath, 0 to 100
 */
public record ResistFigures(
        Figure thicknessMicrometres,
        Figure thinningMinutes,
        Figure thinningLeastMinutes,
        Figure thinningMostMinutes,
        Figure thinningGramsPerLitre,
        Figure thinningCelsius,
        Figure thinnedThicknessMicrometres,
        Figure absorbancePerMicrometre,
        Figure contrastGamma,
        Figure smallestOpeningMicrometres,
        Figure smallestLandMicrometres,
        Figure leastHoldMicrometres) {
    public static final Range THIN = new Range(1, 200, Unit.MICROMETRES, "test strips at 0, 10, 20, 30 and 40 minutes");
    public static final Range OPENING = new Range(1, 500, Unit.MICROMETRES, "test dots of 10 to 200 µm");
    public static final Range LAND = new Range(1, 500, Unit.MICROMETRES, "test holes of 10 to 200 µm");

    public ResistFigures {
        String thinning = "test strips at 0, 10, 20, 30 and 40 minutes";
        thicknessMicrometres.within("resist.thicknessMicrometres", 5, 200, "µm", "ask the film's data sheet");
        thinningMinutes.within("resist.thinningMinutes", 0, 240, "min", thinning);
        thinningLeastMinutes.within("resist.thinningLeastMinutes", 0, 240, "min", thinning);
        thinningMostMinutes.within("resist.thinningMostMinutes", 0, 240, "min", thinning);
        thinningGramsPerLitre.within("resist.thinningGramsPerLitre", 1, 100, "g/L", "10 g/L is usual");
        thinningCelsius.within("resist.thinningCelsius", 5, 60, "°C", "room temperature is usual");
        thinnedThicknessMicrometres.within("resist.thinnedThicknessMicrometres", THIN);
        absorbancePerMicrometre.within("resist.absorbancePerMicrometre", 0, 0.5, "per µm", "ask the film's data sheet");
        contrastGamma.within("resist.contrastGamma", 0.2, 50, "", "read it from a wedge: 1/(0.15 x steps in between)");
        smallestOpeningMicrometres.within("resist.smallestOpeningMicrometres", OPENING);
        smallestLandMicrometres.within("resist.smallestLandMicrometres", LAND);
        leastHoldMicrometres.within("resist.leastHoldMicrometres", 0, 100, "µm", "5 to 10 µm is usual");
        if (thinningLeastMinutes.value() > thinningMostMinutes.value()) {
            throw Refusal.use("workshop resist.thinningLeastMinutes is " + Refusal.plain(thinningLeastMinutes.value())
                    + " min; it must lie between 0 and thinningMostMinutes, "
                    + Refusal.plain(thinningMostMinutes.value()) + " min: exchange the two");
        }
    }

    /** A negative film of 38 um, thinned to about half. */
    public static ResistFigures assumed() {
        String window = "common practice, no source: a soak of 20-30 min; every shop finds its own by test";
        return new ResistFigures(
                Figure.assumed(38, "from memory: a usual gauge, 1.5 mil, unverified"),
                Figure.assumed(27, "assumed: one time within the usual 20-30 min, until a strip test is done"),
                Figure.assumed(20, window),
                Figure.assumed(30, window),
                Figure.assumed(10, "common practice, no source: a soda bath of 1 %, as for developing"),
                Figure.assumed(20, "common practice, no source: a bath at room temperature"),
                Figure.assumed(20, "from memory: about half the gauge, unverified; measure a thinned strip"),
                Figure.assumed(0.4 / 30, "from memory: decadic absorbance 0.4 over 30 µm, unverified"),
                Figure.assumed(
                        1 / StrictMath.log10(4),
                        "textbook contrast curve with E100 = 4 E0 (worked example, no particular film)"),
                Figure.assumed(20, "common practice: 0.5 to 1 times the resist's thickness"),
                Figure.assumed(25, "common practice: 1 to 1.5 times the resist's thickness"),
                Figure.assumed(5, "from memory: 5 to 10 µm, unverified"));
    }
}
