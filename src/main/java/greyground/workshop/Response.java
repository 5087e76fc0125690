package greyground.workshop;

/**
 * The plate as a whole, from film to print, in two numbers.
 *
 * @param edgeShiftMicrometres how far a print's edge lies outside the film's, -100 to 200
 * @param openBiteCoverage film coverage past which more black prints paler, 0.3 to 1
 */
public record Response(Figure edgeShiftMicrometres, Figure openBiteCoverage) {
    public Response {
        edgeShiftMicrometres.within("response.edgeShiftMicrometres", -100, 200, "um", "print and read a test plate");
        openBiteCoverage.within("response.openBiteCoverage", 0.3, 1, "", "print and read a test plate");
    }

    /** What a computed plate shows: grain of 180 um, 40 um deep, etch factor 2, pad radius 1.5 mm. */
    public static Response assumed() {
        return new Response(
                Figure.assumed(18, "edge growth fitted to a computed plate: 180 um grain, 40 um deep, etch factor 2"),
                Figure.assumed(0.87, "a computed plate turns back at 85-90 % coverage: 180 um grain, 40 um deep"));
    }

    Response through(Fields fields) {
        return new Response(
                fields.figure("edgeShiftMicrometres", edgeShiftMicrometres),
                fields.figure("openBiteCoverage", openBiteCoverage));
    }
}
