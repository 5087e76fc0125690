package greyground.desk.setting;

import static greyground.desk.model.Station.COPPER;
import static greyground.desk.model.Station.FILM;
import static greyground.desk.model.Station.PRINT;
import static greyground.desk.model.Station.RESIST;

import greyground.desk.model.Station;
import greyground.desk.setting.Setting.ShopNumber;
import greyground.quantity.Range;
import greyground.workshop.BathFigures;
import greyground.workshop.ExposureFigures;
import greyground.workshop.FilmPrinter;
import greyground.workshop.InkFigures;
import greyground.workshop.LampFigures;
import greyground.workshop.PaperFigures;
import greyground.workshop.ResistFigures;
import greyground.workshop.WipeFigures;
import java.util.List;

/** What the desk can set of the workshop. */
final class ShopSettings {
    static final List<ShopNumber> ALL = List.of(
            number(FILM, "black-density", "Black, ultraviolet", "filmPrinter.blackUvDensity", FilmPrinter.BLACK, 0.05)
                    .saying(
                            "Density of the film's solid black under ultraviolet, as the resist sees it. Measure a solid with an ultraviolet densitometer, or through a step wedge laid beside it."),
            number(FILM, "clear-density", "Clear, ultraviolet", "filmPrinter.clearUvDensity", FilmPrinter.CLEAR, 0.01)
                    .saying("Density of bare film under ultraviolet; it costs exposure time."),
            number(FILM, "spot-growth", "Spot growth", "filmPrinter.spotGrowthMicrometres", FilmPrinter.GROWTH, 0.5)
                    .saying(
                            "How far a printed edge lies outside its pixels. Measure lines of 1 to 4 pixels under a loupe."),
            number(FILM, "margin", "Unprinted edge", "filmPrinter.marginMillimetres", FilmPrinter.MARGIN, 0.5)
                    .saying(
                            "How far from a sheet's edge your printer begins to print. Print a black sheet and measure the widest clear edge; marks that would lie in it are warned of."),
            number(RESIST, "image-seconds", "Image exposure", "exposure.imageSeconds", ExposureFigures.IMAGE, 5)
                    .saying(
                            "Time under the lamp through the positive. Only your own test plate can show it; without a separate screen both times are given at once."),
            number(RESIST, "screen-seconds", "Screen exposure", "exposure.screenSeconds", ExposureFigures.SCREEN, 5)
                    .saying(
                            "Time through the aquatint screen film; it counts towards the image where no screen is exposed."),
            number(RESIST, "step-held", "Step held", "exposure.stepHeld", ExposureFigures.STEP_HELD, 1)
                    .saying("Highest step of a 21-step wedge that kept its resist after your last test exposure."),
            number(RESIST, "target-step", "Step wanted", "exposure.targetStep", ExposureFigures.TARGET_STEP, 1)
                    .saying("The step your best plate held. Each step is 0.15 density: two steps double the light."),
            number(
                            RESIST,
                            "thinned",
                            "Resist once thinned",
                            "resist.thinnedThicknessMicrometres",
                            ResistFigures.THIN,
                            1)
                    .saying(
                            "What the soda bath leaves of the resist. Measure a thinned strip. The plan says it; it moves no tone, for doses are read on resist as you expose it."),
            number(RESIST, "opening", "Smallest opening", "resist.smallestOpeningMicrometres", ResistFigures.OPENING, 1)
                    .saying("Narrowest gap that still washes clean. The test plate's fine dots show it."),
            number(RESIST, "land", "Smallest land", "resist.smallestLandMicrometres", ResistFigures.LAND, 1)
                    .saying("Narrowest piece of resist that still stays on. The test plate's fine holes show it."),
            number(RESIST, "lamp", "Lamp to plate", "light.distanceMillimetres", LampFigures.DISTANCE, 10)
                    .saying("A small lamp twice as far needs four times the time."),
            number(COPPER, "bite", "Bite", "bath.biteMinutes", BathFigures.BITE, 0.5)
                    .saying(
                            "Your usual bite in a fresh bath. Watch the print grow darker with time until it turns: past that the lands go and blacks bite open."),
            number(COPPER, "rate", "Bath's rate", "bath.rateMicrometresPerMinute", BathFigures.RATE, 0.05)
                    .saying("Depth that a fresh bath bites in a minute. Bite a strip of copper and measure its depth."),
            number(COPPER, "etch-factor", "Etch factor", "bath.etchFactor", BathFigures.ETCH_FACTOR, 0.1)
                    .saying(
                            "Depth over undercut: how much deeper than sideways the bath bites; 1 to 3 is usual (common practice, no source). Low values eat the lands."),
            number(COPPER, "temperature", "Bath now", "bath.temperatureCelsius", BathFigures.TEMPERATURE, 0.5)
                    .saying("Read the thermometer in the bath. It changes the minutes of the plan, not the depth."),
            number(COPPER, "baume", "Strength now", "bath.degreesBaume", BathFigures.BAUME, 0.5)
                    .saying("Read the hydrometer; 40 to 42 is usual for this resist (common practice, no source)."),
            number(COPPER, "copper-load", "Copper in the bath", "bath.copperGramsPerLitre", BathFigures.COPPER, 1)
                    .saying("What earlier plates left in it; it slows the bite."),
            number(PRINT, "pad", "Wiping pad", "wipe.padRadiusMillimetres", WipeFigures.PAD, 0.1)
                    .saying(
                            "How round the pad is that wipes the plate: a small radius reaches deep into wide wells and wipes them pale."),
            number(PRINT, "plate-tone", "Plate tone", "wipe.plateToneMicrometres", WipeFigures.PLATE_TONE, 0.05)
                    .saying("Ink that wiping leaves all over; 0 to 0.3 is a clean wipe."),
            number(PRINT, "ink-density", "Darkest ink", "ink.saturationDensity", InkFigures.SATURATION, 0.05)
                    .saying(
                            "Density over paper of a very thick film of your ink. Measure the darkest tone, less the paper."),
            number(PRINT, "ink-strength", "Ink density", "ink.strengthPerMicrometre", InkFigures.STRENGTH, 0.01)
                    .saying("How fast density grows with the ink's thickness."),
            number(PRINT, "transfer", "Ink transfer", "ink.transferFraction", InkFigures.TRANSFER, 0.05)
                    .saying("Share of a well's ink that goes onto the paper; damp, soft paper takes more."),
            number(PRINT, "paper-density", "Paper", "paper.whiteDensity", PaperFigures.WHITE_DENSITY, 0.01)
                    .saying("Density of the bare sheet; 0.06 is a white cotton paper."));

    private ShopSettings() {}

    private static ShopNumber number(Station station, String id, String label, String path, Range range, double step) {
        return new ShopNumber(id, station, label, path, range, step, "");
    }

    static List<ShopNumber> at(Station station) {
        return ALL.stream().filter(each -> each.station() == station).toList();
    }
}
