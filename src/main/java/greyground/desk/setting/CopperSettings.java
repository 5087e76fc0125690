package greyground.desk.setting;

import greyground.desk.model.Station;
import greyground.desk.model.Unit;
import greyground.desk.setting.Setting.ShopNumber;
import java.util.List;

/** What is settled of the bite. */
final class CopperSettings {
    static final List<Setting> ALL = List.of(
            new ShopNumber(
                    "bite",
                    Station.COPPER,
                    "Bite",
                    Unit.MINUTES,
                    0.1,
                    1440,
                    0.5,
                    "bath.biteMinutes",
                    words -> !"unetched-film".equals(words.get("process")),
                    "Your usual bite in a fresh bath. Watch the print grow darker with time until it turns: past that the lands go and blacks bite open."),
            new ShopNumber(
                    "rate",
                    Station.COPPER,
                    "Bath's rate",
                    Unit.RATE,
                    0.05,
                    100,
                    0.05,
                    "bath.rateMicrometresPerMinute",
                    words -> !"unetched-film".equals(words.get("process")),
                    "Depth that a fresh bath bites in a minute. Bite a strip of copper and measure its depth."),
            new ShopNumber(
                    "etch-factor",
                    Station.COPPER,
                    "Depth over creep",
                    Unit.RATIO,
                    0.5,
                    10,
                    0.1,
                    "bath.etchFactor",
                    words -> !"unetched-film".equals(words.get("process")),
                    "How much deeper than sideways the bath bites; 1 to 3 is usual. Low values eat the lands."),
            new ShopNumber(
                    "temperature",
                    Station.COPPER,
                    "Bath now",
                    Unit.CELSIUS,
                    5,
                    50,
                    0.5,
                    "bath.temperatureCelsius",
                    words -> !"unetched-film".equals(words.get("process")),
                    "Read the thermometer in the bath. It changes the minutes of the plan, not the depth."),
            new ShopNumber(
                    "baume",
                    Station.COPPER,
                    "Strength now",
                    Unit.BAUME,
                    20,
                    46,
                    0.5,
                    "bath.degreesBaume",
                    words -> !"unetched-film".equals(words.get("process")),
                    "Read the hydrometer; 40 to 42 is usual for dry film."),
            new ShopNumber(
                    "copper-load",
                    Station.COPPER,
                    "Copper in the bath",
                    Unit.GRAMS,
                    0,
                    200,
                    1,
                    "bath.copperGramsPerLitre",
                    words -> !"unetched-film".equals(words.get("process")),
                    "What earlier plates left in it; it slows the bite."));

    private CopperSettings() {}
}
