package greyground.workshop;

import greyground.quantity.FilmPixels;
import greyground.quantity.Range;
import greyground.quantity.Resolution;
import greyground.quantity.Unit;

/**
 * The printer that makes the films, with the film it prints on. Densities are ultraviolet (350-420 nm), as the resist sees them;
 * they differ from what the eye sees.
 *
 * @param resolutionDpi dots it really lays, 60 to 20 000
 * @param clearUvDensity of bare film, 0 to 1.5
 * @param blackUvDensity of a solid black, 0.3 to 6
 * @param spotGrowthMicrometres how far a printed edge lies outside its pixels, -50 to 100
 * @param edgeSoftnessMicrometres standard deviation of the blur of a printed edge, 0 to 100
 * @param scaleX printed length over wanted length across the film, 0.9 to 1.1
 * @param scaleY the same along the film's travel, 0.9 to 1.1
 * @param marginMillimetres that it leaves unprinted at each edge of a sheet, 0 to 30
 */
public record FilmPrinter(
        Figure resolutionDpi,
        Figure clearUvDensity,
        Figure blackUvDensity,
        Figure spotGrowthMicrometres,
        Figure edgeSoftnessMicrometres,
        Figure scaleX,
        Figure scaleY,
        Figure marginMillimetres) {
    public static final Range BLACK = new Range(0.3, 6, Unit.DENSITY, "measure a solid black under ultraviolet");
    public static final Range CLEAR = new Range(0, 1.5, Unit.DENSITY, "measure bare film under ultraviolet");
    public static final Range GROWTH = new Range(-50, 100, Unit.MICROMETRES, "measure 1 to 4 pixel lines");

    public static final Range MARGIN =
            new Range(0, 30, Unit.MILLIMETRES, "print a black sheet and measure its clear edge");

    public FilmPrinter {
        resolutionDpi.within("filmPrinter.resolutionDpi", Resolution.DOTS);
        clearUvDensity.within("filmPrinter.clearUvDensity", CLEAR);
        blackUvDensity.within("filmPrinter.blackUvDensity", BLACK);
        spotGrowthMicrometres.within("filmPrinter.spotGrowthMicrometres", GROWTH);
        edgeSoftnessMicrometres.within(
                "filmPrinter.edgeSoftnessMicrometres", 0, 100, "µm", "look at an edge under a loupe");
        scaleX.within("filmPrinter.scaleX", 0.9, 1.1, "", "measure the film's 100 mm ruler and divide by 100");
        scaleY.within("filmPrinter.scaleY", 0.9, 1.1, "", "measure the film's 100 mm ruler and divide by 100");
        marginMillimetres.within("filmPrinter.marginMillimetres", MARGIN);
    }

    /** An inkjet printer with pigment black on coated clear film. */
    public static FilmPrinter assumed() {
        return new FilmPrinter(
                Figure.assumed(1440, "common practice: a usual true resolution of inkjet printers"),
                Figure.assumed(0.10, "from memory: coated clear inkjet film 0.05-0.20, unverified"),
                Figure.assumed(2.6, "from memory: pigment black on inkjet film 2.0-3.2, unverified"),
                Figure.assumed(
                        4, "from memory: an inkjet spot is at least 1.5 pixels wide, a quarter pixel over each edge"),
                Figure.assumed(3, "assumed: a dark dot's edge is sharp to a few micrometres"),
                Figure.assumed(1, "common practice: true until the film's 100 mm ruler is measured"),
                Figure.assumed(1, "common practice: true until the film's 100 mm ruler is measured"),
                Figure.assumed(3, "common practice, no source: printers leave some 3 to 5 mm at each edge unprinted"));
    }

    /** How large this printer's pixels come out at a resolution that a film's file states. */
    public FilmPixels pixels(Resolution resolution) {
        return new FilmPixels(resolution, scaleX.value(), scaleY.value());
    }
}
