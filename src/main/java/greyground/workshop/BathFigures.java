package greyground.workshop;

import greyground.quantity.Range;
import greyground.quantity.Unit;

/**
 * The ferric chloride bath. The rate belongs to a fresh bath of the strength and temperature it was found at.
 *
 * @param degreesBaume strength now, modulus 145, 20 to 46
 * @param temperatureCelsius now, 5 to 50
 * @param litres in the tray, 0.1 to 1000
 * @param copperGramsPerLitre dissolved so far, 0 to 200
 * @param copperLimitGramsPerLitre at which the bite would stop, 10 to 300
 * @param rateMicrometresPerMinute in a fresh bath, 0.05 to 100
 * @param rateDegreesBaume strength at which the rate was found, 20 to 46
 * @param rateTemperatureCelsius temperature at which the rate was found, 5 to 50
 * @param activationKilojoulesPerMole how strongly temperature tells, 10 to 60
 * @param etchFactor depth over undercut, 0.5 to 10
 * @param biteMinutes the shop's usual bite in the bath the rate belongs to, 0.1 to 1440
 */
public record BathFigures(
        Figure degreesBaume,
        Figure temperatureCelsius,
        Figure litres,
        Figure copperGramsPerLitre,
        Figure copperLimitGramsPerLitre,
        Figure rateMicrometresPerMinute,
        Figure rateDegreesBaume,
        Figure rateTemperatureCelsius,
        Figure activationKilojoulesPerMole,
        Figure etchFactor,
        Figure biteMinutes) {
    public static final Range BITE = new Range(0.1, 1440, Unit.MINUTES, "find it with a test plate");
    public static final Range RATE = new Range(0.05, 100, Unit.RATE, "bite a strip and measure its depth");
    public static final Range ETCH_FACTOR = new Range(0.5, 10, Unit.RATIO, "depth over undercut; 1 to 3 is usual");
    public static final Range TEMPERATURE = new Range(5, 50, Unit.CELSIUS, "read a thermometer in the bath");
    public static final Range BAUME = new Range(20, 46, Unit.BAUME, "read a hydrometer; 40 to 42 is usual");
    public static final Range COPPER = new Range(0, 200, Unit.GRAMS, "add up the bite log");

    public BathFigures {
        degreesBaume.within("bath.degreesBaume", BAUME);
        temperatureCelsius.within("bath.temperatureCelsius", TEMPERATURE);
        litres.within("bath.litres", 0.1, 1000, "L", "give the bath that is in the tray");
        copperGramsPerLitre.within("bath.copperGramsPerLitre", COPPER);
        copperLimitGramsPerLitre.within("bath.copperLimitGramsPerLitre", 10, 300, "g/L", "100 is usual");
        rateMicrometresPerMinute.within("bath.rateMicrometresPerMinute", RATE);
        rateDegreesBaume.within("bath.rateDegreesBaume", 20, 46, "degrees Baume", "give the test's strength");
        rateTemperatureCelsius.within("bath.rateTemperatureCelsius", 5, 50, "C", "give the test's temperature");
        activationKilojoulesPerMole.within(
                "bath.activationKilojoulesPerMole", 10, 60, "kJ/mol", "fit it to two strips at two temperatures");
        etchFactor.within("bath.etchFactor", ETCH_FACTOR);
        biteMinutes.within("bath.biteMinutes", BITE);
    }

    /** Two litres of fresh 42 degree bath, still, at 20 degrees. */
    public static BathFigures assumed() {
        String fresh = "assumed fresh until the bite log says otherwise";
        return new BathFigures(
                Figure.assumed(42, "common practice: one bath at 40-42 degrees Baume for dry film"),
                Figure.assumed(20, "common practice: room temperature"),
                Figure.assumed(2, "common practice: a tray for a plate of 20 x 25 cm"),
                Figure.assumed(0, fresh),
                Figure.assumed(
                        100,
                        "an etching-equipment maker's note: the rate falls quickly after about 100 g/L; that it ends there is assumed"),
                Figure.assumed(2, "from memory: still tray, 42 degrees Baume, 20 C, 0.8-2 µm/min, unverified"),
                Figure.assumed(42, "assumed: the strength the rate is quoted for"),
                Figure.assumed(20, "assumed: the temperature the rate is quoted for"),
                Figure.assumed(35, "between 20.5 (Bryce & Berk 1995, 30-50 C) and 58.7 (a photo-etch house at 44 C)"),
                Figure.assumed(2, "from memory: still tray 1-2, unverified; Allen, Horne & Stevens 1982 define it"),
                Figure.assumed(
                        20,
                        "common practice, no source: in a bath such as the rate was tested in; find your own with a test plate"));
    }
}
