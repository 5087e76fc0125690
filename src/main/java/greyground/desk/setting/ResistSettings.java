package greyground.desk.setting;

import greyground.desk.model.Station;
import greyground.desk.model.Unit;
import greyground.desk.setting.Setting.Choice;
import greyground.desk.setting.Setting.JobNumber;
import greyground.desk.setting.Setting.ShopNumber;
import greyground.desk.setting.Setting.Way;
import java.util.List;

/** What is settled of exposing and washing out. */
final class ResistSettings {
    static final List<Setting> ALL = List.of(
            new Choice(
                    "process",
                    Station.RESIST,
                    "Process",
                    List.of(
                            Way.of("etched film", "process", "etched-film"),
                            Way.of("with sprayed aquatint", "process", "sprayed-aquatint"),
                            Way.of("photogravure", "process", "photogravure"),
                            Way.of("unetched film", "process", "unetched-film")),
                    words -> true,
                    "How the plate is made. Etched film: thinned film, dots on the positive, one bite. Sprayed aquatint: a ground is sprayed on the open copper. Photogravure: continuous film, and a screen film exposed by itself. Unetched: the film itself holds the ink."),
            new JobNumber(
                    "aquatint-land",
                    Station.RESIST,
                    "Aquatint covers",
                    Unit.PERCENT,
                    5,
                    90,
                    1,
                    "aquatint-land",
                    0,
                    "50%",
                    "Share of the open copper that the sprayed ground keeps from the bath. 40 to 60 is usual, judged under a loupe on a strip sprayed alongside: about as much dot as gap. Less prints darker and bites open sooner."),
            new JobNumber(
                    "aquatint-grain",
                    Station.RESIST,
                    "Aquatint grain",
                    Unit.MICROMETRES,
                    5,
                    300,
                    5,
                    "aquatint-grain",
                    0,
                    "50um",
                    "Mean width of the sprayed dots. 30 to 80 is a medium grain; finer dots go sooner in a long bite."),
            new ShopNumber(
                    "image-seconds",
                    Station.RESIST,
                    "Image exposure",
                    Unit.SECONDS,
                    0.1,
                    36000,
                    5,
                    "exposure.imageSeconds",
                    words -> true,
                    "Time under the lamp through the positive. Only your own test plate can tell it; without a separate screen both times are given at once."),
            new ShopNumber(
                    "screen-seconds",
                    Station.RESIST,
                    "Screen exposure",
                    Unit.SECONDS,
                    0,
                    36000,
                    5,
                    "exposure.screenSeconds",
                    words -> true,
                    "Time through the aquatint screen film; it counts towards the image where no screen is exposed."),
            new ShopNumber(
                    "step-held",
                    Station.RESIST,
                    "Step held",
                    Unit.STEPS,
                    0,
                    21,
                    1,
                    "exposure.stepHeld",
                    words -> true,
                    "Highest step of a 21-step wedge that kept its film after your last test exposure."),
            new ShopNumber(
                    "target-step",
                    Station.RESIST,
                    "Step wanted",
                    Unit.STEPS,
                    0,
                    21,
                    1,
                    "exposure.targetStep",
                    words -> true,
                    "The step your best plate held. Each step is 0.15 density: two steps double the light."),
            new ShopNumber(
                    "thinned",
                    Station.RESIST,
                    "Film once thinned",
                    Unit.MICROMETRES,
                    1,
                    200,
                    1,
                    "resist.thinnedThicknessMicrometres",
                    words -> true,
                    "What the soda bath leaves of the film. Measure a thinned strip."),
            new ShopNumber(
                    "opening",
                    Station.RESIST,
                    "Smallest opening",
                    Unit.MICROMETRES,
                    1,
                    500,
                    1,
                    "resist.smallestOpeningMicrometres",
                    words -> true,
                    "Narrowest gap that still washes clean. The test plate's fine dots tell."),
            new ShopNumber(
                    "land",
                    Station.RESIST,
                    "Smallest land",
                    Unit.MICROMETRES,
                    1,
                    500,
                    1,
                    "resist.smallestLandMicrometres",
                    words -> true,
                    "Narrowest piece of film that still stays on. The test plate's fine holes tell."),
            new ShopNumber(
                    "lamp",
                    Station.RESIST,
                    "Lamp to plate",
                    Unit.MILLIMETRES,
                    20,
                    5000,
                    10,
                    "light.distanceMillimetres",
                    words -> true,
                    "A small lamp twice as far needs four times the time."));

    private ResistSettings() {}
}
