package greyground.desk;

import greyground.desk.Setting.Choice;
import greyground.desk.Setting.JobNumber;
import greyground.desk.Setting.ShopNumber;
import greyground.desk.Setting.Way;
import java.util.List;
import java.util.Map;

/** What is settled of the positive, and what the shop knows of its film printer. */
final class FilmSettings {
    static final List<Setting> ALL = List.of(
            new JobNumber("plate-width", Station.FILM, "Plate width", Unit.MILLIMETRES, 30, 3000, 1, "plate", 0, "210x148mm", "The copper's own width. Measure the plate you have."),
            new JobNumber("plate-height", Station.FILM, "Plate height", Unit.MILLIMETRES, 30, 3000, 1, "plate", 1, "210x148mm", "The copper's own height, as it will lie under the picture."),
            new Choice("fit", Station.FILM, "Picture", List.of(Way.of("fills the plate", "fit", "fill"), Way.of("shown whole", "fit", "whole")), words -> true, "Filling cuts off evenly what does not suit the plate's proportions; shown whole leaves clear film round it, which prints as paper."),
            new Choice("carrier", Station.FILM, "Dots", List.of(new Way("grain", Map.of("grain", "180um"), words -> words.containsKey("grain")), new Way("halftone", Map.of("ruling", "40"), words -> words.containsKey("ruling"))), words -> words.containsKey("grain") || words.containsKey("ruling"), "Grain is irregular like an aquatint and hides banding; a halftone is regular and reads as a pattern. In photogravure a screen film of its own makes the dots."),
            new JobNumber("grain", Station.FILM, "Grain", Unit.MICROMETRES, 20, 2000, 5, "grain", 0, "180um", "Mean distance of the dots. Coarser dots are safer in resist and bite, finer ones hold more detail; 120 to 260 suits most plates."),
            new JobNumber("ruling", Station.FILM, "Ruling", Unit.LINES, 5, 400, 1, "ruling", 0, "40", "How fine the halftone is. Copper carries 20 to 110 lines to the centimetre; begin near 40."),
            new JobNumber("angle", Station.FILM, "Angle", Unit.DEGREES, -180, 180, 1, "angle", 0, "45", "Of the rows of dots. 45 is least seen."),
            new Choice("dots", Station.FILM, "Dot shape", List.of(Way.of("round", "dots", "round"), Way.of("lines", "dots", "line")), words -> words.containsKey("ruling"), "Round dots that join into round holes, or lines that widen."),
            new JobNumber("screen-spacing", Station.FILM, "Screen spacing", Unit.MICROMETRES, 60, 400, 5, "screen-spacing", 0, "150um", "Mean distance of the aquatint screen film's dots; 120 to 180 is usual."),
            new JobNumber("screen-black", Station.FILM, "Screen black", Unit.PERCENT, 20, 80, 1, "screen-black", 0, "50%", "How much of the screen film is black; 45 to 55 is usual."),
            new Choice("mend", Station.FILM, "Solid blacks", List.of(Way.of("all in grain", "mend", "no"), Way.of("mended", "mend", "yes")), words -> words.containsKey("grain") || words.containsKey("ruling"), "Mended makes strokes solid and gives wide blacks a crisp edge where the plate holds them; grain stays inside wide blacks so that they do not bite open."),
            new JobNumber("bleed", Station.FILM, "Bleed", Unit.MILLIMETRES, 0, 6, 0.5, "bleed", 0, "3mm", "How far the picture runs past the platemark, so that a plate laid askew has no clear strip; 3 to 5 is usual."),
            new JobNumber("bevel", Station.FILM, "Bevel", Unit.MILLIMETRES, 0, 6, 0.5, "bevel", 0, "2mm", "Width of the plate's filed edge; short ticks on the film show where it ends."),
            new Choice("ink-side", Station.FILM, "Ink side", List.of(Way.of("down, on the resist", "ink-side", "down"), Way.of("up, towards the lamp", "ink-side", "up")), words -> true, "Down is sharper: the black touches the resist. Whether the film is mirrored follows from this and from the transfers."),
            new JobNumber("transfers", Station.FILM, "Transfers", Unit.COUNT, 1, 9, 1, "transfers", 0, "1", "Contacts from the plate to the final sheet: 1 is direct printing, 2 offset or a counterproof."),
            new JobNumber("resolution", Station.FILM, "Film printer", Unit.DOTS, 60, 20000, 60, "resolution", 0, "1440dpi", "The printer's own dots per inch. A driver that must rescale the film destroys the grain."),
            new ShopNumber("black-density", Station.FILM, "Black, ultraviolet", Unit.DENSITY, 0.3, 6, 0.05, "filmPrinter.blackUvDensity", words -> true, "Density of the film's solid black under ultraviolet, as the resist sees it. Measure a solid with an ultraviolet densitometer, or through a step wedge laid beside it."),
            new ShopNumber("clear-density", Station.FILM, "Clear, ultraviolet", Unit.DENSITY, 0, 1.5, 0.01, "filmPrinter.clearUvDensity", words -> true, "Density of bare film under ultraviolet; it costs exposure time."),
            new ShopNumber("spot-growth", Station.FILM, "Spot growth", Unit.MICROMETRES, -50, 100, 0.5, "filmPrinter.spotGrowthMicrometres", words -> true, "How far a printed edge lies outside its pixels. Measure lines of 1 to 4 pixels under a loupe."));

    private FilmSettings() {}
}
